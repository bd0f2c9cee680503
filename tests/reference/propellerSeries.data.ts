/**
 * Values of the published polynomials, worked out from them in double precision by Python 3.11, apart from the project,
 * and rounded. B series: Oosterveld & van Oossanen, Further computer-analyzed data of the Wageningen B-screw series,
 * International Shipbuilding Progress 22 (1975) 251, tables 5 and 6 (p. 257); Ka screws: Oosterveld, Wake adapted
 * ducted propellers, Netherlands Ship Model Basin publication 345 (1970).
 */

/** Points are J, K_T, 10 K_Q; the peak is efficiency and J. */
export const B_SCREWS: readonly {
  readonly blades: number;
  readonly areaRatio: number;
  readonly pitchRatio: number;
  readonly zeroThrust: number;
  readonly peak: readonly [number, number];
  readonly points: readonly (readonly [number, number, number])[];
}[] = [
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 0.6,
    zeroThrust: 0.6506,
    peak: [0.5363, 0.466],
    points: [
      [0, 0.25, 0.2481],
      [0.2, 0.1876, 0.1993],
      [0.4, 0.1107, 0.1372],
      [0.6, 0.0233, 0.0663],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 0.8,
    zeroThrust: 0.8564,
    peak: [0.6393, 0.653],
    points: [
      [0, 0.3542, 0.4336],
      [0.2, 0.2906, 0.3678],
      [0.4, 0.2123, 0.2846],
      [0.6, 0.1234, 0.1876],
      [0.8, 0.0277, 0.0808],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1,
    zeroThrust: 1.0618,
    peak: [0.6946, 0.842],
    points: [
      [0, 0.4547, 0.6754],
      [0.2, 0.3919, 0.5942],
      [0.4, 0.3142, 0.4921],
      [0.6, 0.2256, 0.3727],
      [0.8, 0.1297, 0.2397],
      [1, 0.0307, 0.0969],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1.2,
    zeroThrust: 1.2717,
    peak: [0.727, 1.032],
    points: [
      [0, 0.5455, 0.9631],
      [0.2, 0.4862, 0.8689],
      [0.4, 0.4115, 0.7506],
      [0.6, 0.3251, 0.6124],
      [0.8, 0.231, 0.4582],
      [1, 0.1329, 0.292],
      [1.2, 0.0346, 0.1178],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1.4,
    zeroThrust: 1.4903,
    peak: [0.7561, 1.226],
    points: [
      [0, 0.6244, 1.2827],
      [0.2, 0.5717, 1.1788],
      [0.4, 0.5025, 1.0479],
      [0.6, 0.4206, 0.8947],
      [0.8, 0.3299, 0.7234],
      [1, 0.2339, 0.5388],
      [1.2, 0.1364, 0.3452],
    ],
  },
  {
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 0.6,
    zeroThrust: 0.6753,
    peak: [0.591, 0.493],
    points: [
      [0, 0.2334, 0.2271],
      [0.2, 0.1767, 0.1808],
      [0.4, 0.1081, 0.1254],
      [0.6, 0.0307, 0.0622],
    ],
  },
  {
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 0.8,
    zeroThrust: 0.8809,
    peak: [0.6805, 0.68],
    points: [
      [0, 0.3217, 0.3878],
      [0.2, 0.2648, 0.3277],
      [0.4, 0.1959, 0.2552],
      [0.6, 0.1181, 0.1718],
      [0.8, 0.0347, 0.0785],
    ],
  },
  {
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 1,
    zeroThrust: 1.0867,
    peak: [0.723, 0.869],
    points: [
      [0, 0.4057, 0.5964],
      [0.2, 0.3502, 0.5233],
      [0.4, 0.2825, 0.4353],
      [0.6, 0.2057, 0.334],
      [0.8, 0.123, 0.2207],
      [1, 0.0373, 0.0968],
    ],
  },
  {
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 1.2,
    zeroThrust: 1.2955,
    peak: [0.745, 1.055],
    points: [
      [0, 0.4809, 0.8432],
      [0.2, 0.4287, 0.7583],
      [0.4, 0.3641, 0.6566],
      [0.6, 0.2899, 0.5399],
      [0.8, 0.2092, 0.4101],
      [1, 0.1248, 0.2691],
      [1.2, 0.0399, 0.1186],
    ],
  },
  {
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 1.4,
    zeroThrust: 1.5074,
    peak: [0.7677, 1.231],
    points: [
      [0, 0.5464, 1.1121],
      [0.2, 0.5, 1.0172],
      [0.4, 0.4403, 0.9037],
      [0.6, 0.3701, 0.7741],
      [0.8, 0.2925, 0.631],
      [1, 0.2101, 0.4769],
      [1.2, 0.1261, 0.3143],
    ],
  },
  {
    blades: 5,
    areaRatio: 0.75,
    pitchRatio: 0.6,
    zeroThrust: 0.6463,
    peak: [0.5244, 0.461],
    points: [
      [0, 0.2599, 0.2578],
      [0.2, 0.1966, 0.2096],
      [0.4, 0.1164, 0.1465],
      [0.6, 0.023, 0.071],
    ],
  },
  {
    blades: 5,
    areaRatio: 0.75,
    pitchRatio: 0.8,
    zeroThrust: 0.8527,
    peak: [0.6281, 0.646],
    points: [
      [0, 0.3671, 0.4467],
      [0.2, 0.3042, 0.3832],
      [0.4, 0.2241, 0.3007],
      [0.6, 0.1307, 0.2014],
      [0.8, 0.0281, 0.0876],
    ],
  },
  {
    blades: 5,
    areaRatio: 0.75,
    pitchRatio: 1,
    zeroThrust: 1.0585,
    peak: [0.69, 0.835],
    points: [
      [0, 0.469, 0.6896],
      [0.2, 0.4086, 0.6126],
      [0.4, 0.3308, 0.5133],
      [0.6, 0.2395, 0.394],
      [0.8, 0.1386, 0.2571],
      [1, 0.0318, 0.1049],
    ],
  },
  {
    blades: 5,
    areaRatio: 0.75,
    pitchRatio: 1.2,
    zeroThrust: 1.2689,
    peak: [0.7251, 1.023],
    points: [
      [0, 0.5587, 0.9762],
      [0.2, 0.5035, 0.8888],
      [0.4, 0.4306, 0.7759],
      [0.6, 0.3437, 0.6406],
      [0.8, 0.2465, 0.4857],
      [1, 0.1429, 0.3142],
      [1.2, 0.0366, 0.1293],
    ],
  },
  {
    blades: 5,
    areaRatio: 0.75,
    pitchRatio: 1.4,
    zeroThrust: 1.4912,
    peak: [0.7485, 1.218],
    points: [
      [0, 0.6333, 1.2943],
      [0.2, 0.5862, 1.2016],
      [0.4, 0.5205, 1.0798],
      [0.6, 0.4401, 0.9327],
      [0.8, 0.3486, 0.764],
      [1, 0.2499, 0.5775],
      [1.2, 0.1476, 0.3769],
    ],
  },
];

/** Changes are Re, ΔK_T, ΔK_Q. */
export const REYNOLDS_CHANGES: readonly {
  readonly blades: number;
  readonly areaRatio: number;
  readonly pitchRatio: number;
  readonly J: number;
  readonly changes: readonly (readonly [number, number, number])[];
}[] = [
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1,
    J: 0,
    changes: [
      [2.0001e6, 0.00035, 1.9e-5],
      [1e7, 0.00035, -0.00077],
      [1e8, 0.00035, -0.001595],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1,
    J: 0.5,
    changes: [
      [2.0001e6, -7e-5, -4e-6],
      [1e7, 0.00025, -0.000801],
      [1e8, 0.00075, -0.00164],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1,
    J: 0.8,
    changes: [
      [2.0001e6, 0, 4e-6],
      [1e7, 0.00072, -0.000797],
      [1e8, 0.00186, -0.001641],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 0.6,
    J: 0.3,
    changes: [
      [2.0001e6, 0.00018, -5.8e-5],
      [1e7, 0.00029, -0.000765],
      [1e8, 0.00048, -0.001545],
    ],
  },
  {
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 1,
    J: 0.5,
    changes: [
      [2.0001e6, -0, -3e-6],
      [1e7, 0.00023, -0.000596],
      [1e8, 0.0006, -0.001227],
    ],
  },
  {
    blades: 5,
    areaRatio: 0.75,
    pitchRatio: 1,
    J: 0.5,
    changes: [
      [2.0001e6, -1e-5, -5e-6],
      [1e7, 0.00032, -0.000866],
      [1e8, 0.00083, -0.001773],
    ],
  },
  {
    blades: 4,
    areaRatio: 0.7,
    pitchRatio: 1.4,
    J: 1,
    changes: [
      [2.0001e6, -0.00022, -7.9e-5],
      [1e7, 0.00063, -0.000892],
      [1e8, 0.00187, -0.00171],
    ],
  },
];

/** Ka 4-70 in nozzle 19A. Points are J, K_T, K_TN, 10 K_Q; share is K_TN/K_T and merit (K_T/π)^1.5/K_Q at rest. */
export const KA_4_70: readonly {
  readonly pitchRatio: number;
  readonly share: number;
  readonly merit: number;
  readonly zeroThrust: number;
  readonly peak: readonly [number, number];
  readonly points: readonly (readonly [number, number, number, number])[];
}[] = [
  {
    pitchRatio: 0.6,
    share: 0.47,
    merit: 1.286,
    zeroThrust: 0.5097,
    peak: [0.4016, 0.321],
    points: [
      [0, 0.2336, 0.1098, 0.1577],
      [0.2, 0.1528, 0.0505, 0.146],
      [0.4, 0.0614, 0.0003, 0.1097],
    ],
  },
  {
    pitchRatio: 0.8,
    share: 0.493,
    merit: 1.487,
    zeroThrust: 0.669,
    peak: [0.5155, 0.442],
    points: [
      [0, 0.3695, 0.1821, 0.2713],
      [0.2, 0.2738, 0.1006, 0.2582],
      [0.4, 0.174, 0.0366, 0.2179],
      [0.6, 0.0511, -0.0236, 0.1463],
    ],
  },
  {
    pitchRatio: 1.0,
    share: 0.511,
    merit: 1.547,
    zeroThrust: 0.8317,
    peak: [0.5775, 0.566],
    points: [
      [0, 0.5257, 0.2688, 0.4424],
      [0.2, 0.4142, 0.166, 0.4279],
      [0.4, 0.3068, 0.087, 0.3844],
      [0.6, 0.1847, 0.0199, 0.3077],
      [0.8, 0.029, -0.053, 0.1908],
    ],
  },
  {
    pitchRatio: 1.2,
    share: 0.519,
    merit: 1.553,
    zeroThrust: 0.9942,
    peak: [0.6075, 0.689],
    points: [
      [0, 0.6938, 0.3602, 0.6683],
      [0.2, 0.5633, 0.2385, 0.6521],
      [0.4, 0.4467, 0.1431, 0.6063],
      [0.6, 0.3255, 0.0664, 0.5266],
      [0.8, 0.1808, -0.0078, 0.4061],
    ],
  },
  {
    pitchRatio: 1.4,
    share: 0.516,
    merit: 1.551,
    zeroThrust: 1.1436,
    peak: [0.5996, 0.793],
    points: [
      [0, 0.8657, 0.4466, 0.933],
      [0.2, 0.7081, 0.3108, 0.9145],
      [0.4, 0.5763, 0.1991, 0.8677],
      [0.6, 0.4517, 0.1112, 0.7886],
      [0.8, 0.3155, 0.0348, 0.6701],
    ],
  },
];

/** Ka 5-75 in nozzle 19A at rest. */
export const KA_5_75: readonly {
  readonly pitchRatio: number;
  readonly thrust: number;
  readonly nozzleThrust: number;
  readonly tenTorque: number;
  readonly merit: number;
}[] = [
  { pitchRatio: 0.6, thrust: 0.2369, nozzleThrust: 0.1098, tenTorque: 0.1679, merit: 1.234 },
  { pitchRatio: 0.8, thrust: 0.3747, nozzleThrust: 0.1847, tenTorque: 0.284, merit: 1.45 },
  { pitchRatio: 1.0, thrust: 0.5343, nozzleThrust: 0.2716, tenTorque: 0.4565, merit: 1.536 },
  { pitchRatio: 1.2, thrust: 0.708, nozzleThrust: 0.3663, tenTorque: 0.6854, merit: 1.561 },
  { pitchRatio: 1.4, thrust: 0.8879, nozzleThrust: 0.4647, tenTorque: 0.9652, merit: 1.557 },
];
