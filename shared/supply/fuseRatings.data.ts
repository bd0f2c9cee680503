/** Rated currents of fuses, A, in rising order. Digits from memory: go by the maker's list. */
export interface FuseSeries {
  /** As a sentence names it. */ readonly name: string;
  /** Greatest direct voltage, V, that the usual fuses of the series break; infinite: by the maker's data. */
  readonly greatestVoltage: number;
  readonly ratings: readonly number[];
}

/** Blade fuses of road vehicles, rated for 32 V. ISO 8820-3, types C and E. */
export const BLADE_FUSES: FuseSeries = {
  name: "blade fuses of ISO 8820-3, for up to 32 V",
  greatestVoltage: 32,
  ratings: [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100],
};

/** Low-voltage fuses; preferred ratings of IEC 60269-1. */
export const LOW_VOLTAGE_FUSES: FuseSeries = {
  name: "preferred ratings of IEC 60269, with a stated breaking capacity for direct current",
  greatestVoltage: Number.POSITIVE_INFINITY,
  ratings: [2, 4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400],
};

/** Fuse over continuous current, at least, so that it does not age under it. Common practice, no source. */
export const FUSE_MARGIN = 1.25;
