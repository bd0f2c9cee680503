/** How many of each kind there are to choose from. */
export interface Sizes {
  readonly motors: number;
  readonly controllers: number;
  readonly supplies: number;
  readonly gears: number;
  readonly propellers: number;
}

/** Places of one combination in the lists of parts. */
export interface Places {
  motor: number;
  controller: number;
  supply: number;
  gear: number;
  propeller: number;
}

/** Number of combinations: one of each kind. */
export function combinationCount({ motors, controllers, supplies, gears, propellers }: Sizes): number {
  return motors * controllers * supplies * gears * propellers;
}

/**
 * Fills and returns `places` with the combination of that number. The propeller changes fastest, then the gear, the
 * supply, the controller and the motor, so that what motor and supply share is worked out once for many propellers.
 */
export function placesOf(number: number, sizes: Sizes, places: Places = emptyPlaces()): Places {
  const { propellers, gears, supplies, controllers } = sizes;
  const abovePropeller = Math.floor(number / propellers);
  const aboveGear = Math.floor(abovePropeller / gears);
  const aboveSupply = Math.floor(aboveGear / supplies);
  const motor = Math.floor(aboveSupply / controllers);
  places.propeller = number - abovePropeller * propellers;
  places.gear = abovePropeller - aboveGear * gears;
  places.supply = aboveGear - aboveSupply * supplies;
  places.controller = aboveSupply - motor * controllers;
  places.motor = motor;
  return places;
}

function emptyPlaces(): Places {
  return { motor: 0, controller: 0, supply: 0, gear: 0, propeller: 0 };
}
