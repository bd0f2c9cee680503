/**
 * Polynomials of ducted screw series: each row is C, x, y of the sum Σ C (P/D)^x J^y. K_T is of propeller and nozzle
 * together, K_TN of the nozzle alone. Tested with a nozzle half a diameter long and a tip gap of about 1 % of the
 * diameter.
 *
 * Source   Oosterveld, Wake adapted ducted propellers, Netherlands Ship Model Basin publication 345 (1970); Kuiper, The
 *          Wageningen Propeller Series, MARIN publication 92-001 (1992). Taken from one open transcription: the last
 *          digits of the K_T term (6, 1) of Ka 4-70, and the whole of Ka 5-75, were not compared with a second one.
 */
export type NozzleTerm = readonly [coefficient: number, pitch: number, advance: number];

export interface NozzleSeriesTable {
  readonly thrust: readonly NozzleTerm[];
  readonly nozzleThrust: readonly NozzleTerm[];
  readonly torque: readonly NozzleTerm[];
}

/** Ka 4-70 in nozzle 19A. */
export const KA_4_70_IN_19A: NozzleSeriesTable = {
  thrust: [
    [0.03055, 0, 0],
    [-0.148687, 0, 1],
    [-0.391137, 0, 3],
    [-0.432612, 1, 1],
    [0.667657, 2, 0],
    [0.285076, 2, 2],
    [-0.172529, 3, 0],
    [-0.017283, 6, 1],
  ],
  nozzleThrust: [
    [0.076594, 0, 0],
    [0.075223, 0, 1],
    [-0.061881, 0, 2],
    [-0.138094, 0, 3],
    [-0.37062, 0, 5],
    [0.323447, 0, 6],
    [-0.271337, 1, 0],
    [-0.687921, 1, 1],
    [0.225189, 1, 2],
    [-0.081101, 1, 6],
    [0.666028, 2, 0],
    [0.734285, 2, 2],
    [-0.202467, 3, 0],
    [-0.54249, 3, 2],
    [-0.016149, 3, 6],
    [0.099819, 4, 3],
    [0.030084, 5, 1],
    [-0.001876, 6, 2],
  ],
  torque: [
    [0.006735, 0, 0],
    [-0.016306, 0, 2],
    [-0.007244, 0, 4],
    [-0.024012, 1, 2],
    [0.005193, 2, 2],
    [0.046605, 3, 0],
    [-0.007366, 4, 0],
    [-0.00173, 6, 0],
    [-0.000337, 6, 1],
    [0.000861, 6, 2],
  ],
};

/** Ka 5-75 in nozzle 19A. */
export const KA_5_75_IN_19A: NozzleSeriesTable = {
  thrust: [
    [0.033, 0, 0],
    [-0.153463, 0, 1],
    [-0.398491, 0, 3],
    [-0.435515, 1, 1],
    [0.664045, 2, 0],
    [0.283225, 2, 2],
    [-0.162764, 3, 0],
    [-0.017208, 6, 1],
  ],
  nozzleThrust: [
    [-0.000813, 0, 0],
    [0.034885, 0, 1],
    [-0.276187, 0, 3],
    [-0.626198, 1, 1],
    [0.450379, 1, 2],
    [0.359718, 2, 0],
    [-0.087289, 3, 0],
    [-0.003751, 6, 2],
  ],
  torque: [
    [0.00721, 0, 0],
    [-0.01467, 0, 2],
    [-0.006398, 0, 4],
    [-0.03138, 1, 2],
    [0.010386, 2, 2],
    [0.053169, 3, 0],
    [-0.014731, 4, 0],
  ],
};
