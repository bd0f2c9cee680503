/** How a model works, on one short page. */
export interface Method {
  readonly id: string;
  readonly name: string;
  readonly idea: string;
  readonly equations: readonly string[];
  readonly range: string;
  readonly sure: string;
  readonly sources: readonly string[];
}

const SERIES_SOURCE =
  "Oosterveld & van Oossanen, Further computer-analyzed data of the Wageningen B-screw series, International Shipbuilding Progress 22 (1975) 251, tables 1, 5 and 6";
const RESEARCH_SOURCE =
  "Deters, Ananda & Selig, Reynolds number effects on the performance of small-scale propellers, AIAA 2014-2151, and the University of Illinois propeller data set, volume 2";

/** Every model behind this screen. What is uncertain is said where the number is made; here is why. */
export const METHODS: readonly Method[] = [
  {
    id: "momentum",
    name: "Momentum limit",
    idea: "The propeller is a disc that pushes a stream of water. Thrust is mass flow times the speed given to it; ideal power is thrust times the speed through the disc. Friction, swirl and tip loss only take away, so no open propeller does better.",
    equations: [
      "At rest: T = (2 ρ A P²)^⅓, in a nozzle of exit area σ A: T = (4 σ ρ A P²)^⅓",
      "At speed: T = 2 ρ A (V + v) v,  P = T (V + v),  η_i = 2/(1 + √(1 + C_Th))",
      "Static merit FM = T^1.5 / (P √(2 ρ A))",
    ],
    range: "Steady running in unbounded water, no swirl, no cavitation, no air drawn from the surface.",
    sure: "A bound, exact under its assumptions. A measured point above it is a mistake in the measurement, or a nozzle.",
    sources: ["Rankine-Froude momentum theory; Carlton, Marine Propellers and Propulsion, chapter 8"],
  },
  {
    id: "series",
    name: "Wageningen B series",
    idea: "Polynomials through tank tests of smooth, well-made open propellers: what a good propeller of this pitch, blade area and number of blades does.",
    equations: ["K_T, K_Q = Σ C J^s (P/D)^t (A_E/A_0)^u Z^v", "η_O = J K_T / (2π K_Q)"],
    range:
      "2 to 7 blades, A_E/A_0 0.30 to 1.05, P/D 0.5 to 1.4, from bollard to where the thrust ends; blade Reynolds number 2e6 and up. Outside it is computed only where that is marked.",
    sure: "About 1 % of the bollard coefficient for such a propeller. A small printed one runs at a hundredth of the Reynolds number: the series is its yardstick, not its forecast.",
    sources: [SERIES_SOURCE],
  },
  {
    id: "nozzle",
    name: "Ka propellers in nozzle 19A",
    idea: "The same for propellers with wide tips in a nozzle that carries part of the thrust: whole, nozzle and blades are told apart.",
    equations: ["K_T, K_TN, K_Q = Σ C (P/D)^x J^y,  K_TP = K_T − K_TN"],
    range: "Ka 4-70 and Ka 5-75, P/D 0.6 to 1.4, tip gap about 1 % of D, nozzle half a diameter long.",
    sure: "The last digits of a few coefficients rest on one transcription. A wider tip gap, usual on printed nozzles, costs thrust that is not in these numbers.",
    sources: ["Oosterveld, Wake adapted ducted propellers, Netherlands Ship Model Basin publication 345 (1970)"],
  },
  {
    id: "blades",
    name: "Blade elements",
    idea: "Each ring of the blade is a small wing in the flow of forward speed, turning and what the propeller itself induces. One angle a ring is searched in a bracket, so it can not run away; tip and hub losses follow Prandtl.",
    equations: [
      "Forces of the section = change of momentum of the ring, in the inflow angle φ alone",
      "F = (2/π) arccos exp(−Z (R − r)/(2 r sin φ)) at the tip, alike at the hub",
    ],
    range:
      "Any advance ratio, at rest, as a windmill, turning either way. Rings do not feel each other; skew and rake are left out of the flow.",
    sure: "The flow part is as good as momentum theory. The section part below is the weak one.",
    sources: [
      "Ning, A simple solution method for the blade element momentum equations with guaranteed convergence, Wind Energy 17 (2014) 1327",
      "Ning, Using blade element momentum methods with gradient-based design optimization, Structural and Multidisciplinary Optimization 64 (2021)",
    ],
  },
  {
    id: "section",
    name: "Sections of small, printed blades",
    idea: "Lift from thin-aerofoil theory with what thickness and the boundary layer take; stall into a flat plate; profile drag as the larger of a smooth blend of laminar and turbulent friction and a rough line. Chosen once on one research propeller, tested on another.",
    equations: [
      "C_L = a (α − α_0),  α_0 = −2 f/c for a circular arc, less in broad blades",
      "laminar floor 2.656/√Re times a transition factor; smooth 2 (1 + 2 t/c) [0.044/Re^⅙ − 5/Re^⅔] above 2e5",
      "rough 2 (1 + 2 t/c) (1.89 + 1.62 log₁₀(c/k_p))^−2.5",
    ],
    range:
      "Blade Reynolds number 5e3 up; camber up to a fifth of the chord. A measured polar from a file takes its place.",
    sure: "The least certain part of every prediction here. The table below holds it against measurements.",
    sources: [
      RESEARCH_SOURCE,
      "ITTC Recommended Procedure 7.5-02-03-01.4; Abbott & von Doenhoff, Theory of Wing Sections (1959), chapter 4",
      "Viterna & Corrigan, Fixed pitch rotor performance of large horizontal axis wind turbines, NASA CP-2230 (1982)",
    ],
  },
  {
    id: "finish",
    name: "Finish, fitted from measurement",
    idea: "The lift factor and the drag of the sections are moved until blade elements give the K_T and K_Q that were measured, for each finish. What remains to a smooth surface is the most further smoothing can bring.",
    equations: ["K_T(k_L, k_D), K_Q(k_L, k_D) = measured; doubt carried by the derivatives"],
    range:
      "Lift factor 0.2 to 1.3, drag not below the laminar floor. Outside, the answer is that no surface explains the measurement.",
    sure: "Differences between two finishes on one blade are surer than each alone: errors of stand, diameter and section model cancel in part.",
    sources: ["Section model above; roughness of grits after ISO 6344; layer heights: common practice, no source"],
  },
  {
    id: "speed",
    name: "Thrust against speed",
    idea: "From most to least trusted: the variant's own run at speed; a series or blade elements scaled through its bollard point; momentum theory with the merit kept.",
    equations: ["T = K_T(J) ρ n² D⁴,  P = 2π K_Q(J) ρ n³ D⁵,  J = V/(n D)"],
    range: "From rest to where the thrust ends. Momentum theory alone does not know the pitch, so not that end.",
    sure: "The band holds the doubt of the bollard point, the spread of the candidate curves and a part for the unmeasured shape, which grows with J. Only a run at speed makes it narrow.",
    sources: [
      "Scaling a curve by one factor: common practice, no source; size of the shape part from published small propellers against the series",
      RESEARCH_SOURCE,
    ],
  },
  {
    id: "carry",
    name: "From the stand to the working water",
    idea: "Same K_T and K_Q at the same J, times a factor for each thing that differs; every factor is listed with its size and doubt.",
    equations: ["T = K_T Π f_i ρ n² D⁴", "ΔK_T = −0.3 ΔC_D (P/D)(c Z/D),  ΔK_Q = 0.25 ΔC_D (c Z/D)"],
    range:
      "Air to water, fresh to sea, tank to open water, exact copies to scale. From air the Reynolds number changes most.",
    sure: "Density is sure. The Reynolds factor lies between drag alone and the trend of one small research propeller; return flow in a tank is a bound of the right size.",
    sources: ["ITTC Recommended Procedure 7.5-02-03-01.4 (the factors 0.3 and 0.25 from memory)", RESEARCH_SOURCE],
  },
  {
    id: "cavitation",
    name: "Cavitation",
    idea: "Pressure over vapour pressure at the blade against how hard the blade is loaded; above a limit line bubbles form on the back.",
    equations: [
      "σ_0.7 = (p_atm + ρ g h − p_v) / (½ ρ V_R²),  τ_c = T / (½ ρ A_P V_R²)",
      "A_E/A_0 = (1.3 + 0.3 Z) T / ((p_0 − p_v) D²) + k",
    ],
    range:
      "σ 0.1 to 1 by formula, the chart ends near 2; beyond it the propeller is told to lie off the chart, never judged.",
    sure: "The digits of the lines are from memory and good to 10 %. They come from 0.4 m models: rough printed blades can cavitate earlier at single spots.",
    sources: [
      "Burrill & Emerson, Transactions of the North East Coast Institution 79 (1963), in Molland, Turnock & Hudson, Ship Resistance and Propulsion",
      "auf'm Keller, Schip en Werf 33 (1966), in Holtrop & Mennen, International Shipbuilding Progress 29 (1982) 166",
    ],
  },
  {
    id: "air",
    name: "Air drawn from the surface",
    idea: "Near the surface the flow to the disc pulls the surface down, and vortices reach it. Small shallow thrusters meet this before cavitation.",
    equations: [
      "Δh = (V_d² − V²)/(2 g),  h = R + Δh",
      "h = D (1 + 2.3 (V_d − V)/√(g D)) against vortices",
      "β = 1 − 0.675 (1 − 0.769 h/R)^1.258",
    ],
    range: "Calm water, a level shaft, nothing between propeller and surface.",
    sure: "Common practice at best: no published tests of small thrusters stand behind these depths.",
    sources: [
      "Bernoulli's equation; ANSI/HI 9.8 for pump intakes, from memory; Minsaas, Faltinsen & Persson, PRADS 1983, from memory; ITTC 7.5-02-03-02.1",
    ],
  },
  {
    id: "pitch",
    name: "A good pitch for a duty",
    idea: "The pitch of a series that makes a thrust with the least power, or the most of a power. The search walks up from low pitch and keeps the first optimum: further ones come from the polynomials, not from tests.",
    equations: ["T = K_T ρ n² D⁴ and P = 2π K_Q ρ n³ D⁵ with n or D open"],
    range: "As the series. A best at an edge of the range is told.",
    sure: "As the series. A motor wants a torque and rate of its own: check the pair on Drive.",
    sources: [
      SERIES_SOURCE,
      "Helma, Surprising behaviour of the Wageningen B-screw series polynomials, Journal of Marine Science and Engineering 8 (2020) 211",
    ],
  },
  {
    id: "strength",
    name: "Blade strength",
    idea: "The blade is a beam held at the hub, bent by the predicted load and pulled by its own rotation; stress is held against what the printed material bears across and along its layers.",
    equations: ["σ = M y / I + F_c / A,  F_c = ∫ ρ_m ω² r A dr", "deflection by integrating M/(E I) twice"],
    range: "Slender solid blades, steady even inflow, no fillet, no notch, twisting of skewed blades left out.",
    sure: "Printed material scatters far more than the beam formula errs: layers, water, heat and a nick from a stone decide. Treat the safety factor as a comparison, test behind a guard.",
    sources: [
      "Gere & Timoshenko, Mechanics of Materials (1997), chapters 5, 9 and 12; Carlton, Marine Propellers and Propulsion, chapter on propeller blade stress",
    ],
  },
];
