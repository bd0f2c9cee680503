/** Where a pack is entered. */
export const ABOUT_PACKS =
  "Lithium packs burn when they are shorted, crushed or over-discharged. Fuse the pack, never leave it charging alone, and keep to its maker's data sheet: its limits come before what is typed here.";

/** Where an instrument is calibrated by weights. */
export const ABOUT_WEIGHTS =
  "Weights that hang fall: secure them with a second line, keep hands and feet out from under them, and stay below the greatest load of cell and stand. Calibrate with the propeller's supply disconnected.";

/** The usual cautions, by what a screen leads to. */
export const CAUTIONS = {
  bench: [
    "A propeller that starts unexpectedly cuts to the bone. Take it off, or put a guard and a switch within reach between you and it, before you connect power; stand out of its plane.",
    "Electricity near water: run the stand from a low-voltage supply, keep mains equipment away from the tank and behind a residual-current device.",
    "Lithium packs burn when they are shorted, crushed or over-discharged. Fuse the pack, never leave it charging alone, and keep to its maker's data sheet.",
  ],
  motor: [
    "A motor without load runs up to its highest speed at once and can jump off the bench: clamp it, take everything loose off the shaft, keep hair, sleeves and fingers away, and begin at low throttle.",
    "Take the propeller off for a run without load, with the supply disconnected. Stay below the speed, voltage and current of the maker's data sheet, and let the winding cool between runs.",
    "Run a motor wet only if its maker allows it or its windings and bearings are sealed for it, from a low-voltage supply with a fuse, mains equipment away from the water and behind a residual-current device. Rinse and dry it afterwards.",
  ],
  parts: [
    "Before a motor, controller or propeller is fitted or changed, disconnect the pack: a propeller that starts unexpectedly cuts to the bone. Guard it before power comes back.",
    ABOUT_PACKS,
    "Electricity near water: feed tethers and stands from a low-voltage supply, keep mains equipment away from the water and behind a residual-current device.",
    ABOUT_WEIGHTS,
  ],
  drive: [
    "These are computed figures. The limits in the data sheets of motor, controller and pack come first: stay below them, fuse the pack for its wiring and try new settings step by step.",
    "Keep hands and lines away from propellers that can start; disconnect the pack before you touch them.",
    "Lithium packs burn when they are shorted, crushed or over-discharged. Charge and store them as their maker says.",
  ],
} as const;

/** Stands under every list of cautions. */
export const WHO_DECIDES =
  "Your local electrical code and the makers' data sheets decide; where you are not sure, ask a qualified person.";
