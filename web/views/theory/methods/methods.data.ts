export type MethodId =
  | "momentum"
  | "series"
  | "nozzle"
  | "blades"
  | "section"
  | "losses"
  | "finish"
  | "speed"
  | "carry"
  | "cavitation"
  | "air"
  | "pitch"
  | "strength";

/** How a model works, on one short page. */
export interface Method {
  readonly id: MethodId;
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
      "At speed, open: T = 2 ρ A (V + v) v,  P = T (V + v),  η_i = 2/(1 + √(1 + C_Th)),  C_Th = T/(½ ρ A V²)",
      "At speed, in a nozzle: T = ρ σ A (V + u) u,  P = T (V + u/2)",
      "Static merit FM = T^1.5 / (P √(2 ρ A)) = K_T^1.5 / (C_P √(π/2)): at most 1 open, √(2σ) in a nozzle",
    ],
    range: "Steady running in unbounded water, no swirl, no cavitation, no air drawn from the surface.",
    sure: "A bound, exact under its assumptions. A measured point above it is a mistake in the measurement, or a nozzle.",
    sources: [
      "Rankine-Froude momentum theory; Carlton, Marine Propellers and Propulsion, chapter 8",
      "With a nozzle: Küchemann & Weber, Aerodynamics of Propulsion (1953)",
    ],
  },
  {
    id: "series",
    name: "Wageningen B series",
    idea: "Polynomials through tank tests of open propellers. The series says what a smooth, well-made propeller of this pitch, blade area and number of blades would do.",
    equations: [
      "K_T, K_Q = Σ C J^s (P/D)^t (A_E/A_0)^u Z^v, with a correction from table 6 above a Reynolds number of 2e6",
      "η_O = J K_T / (2π K_Q)",
    ],
    range:
      "2 to 7 blades, A_E/A_0 0.30 to 1.05, P/D 0.5 to 1.4, from bollard to where the thrust ends; blade Reynolds number 2e6 to 2e9 at 0.75 R. Outside it is computed only where that is marked; below 2e6 the numbers stay those of 2e6.",
    sure: "About 1 % of the bollard coefficient for such a propeller (common practice, no source). A small printed one runs at a tenth to a hundredth of the Reynolds number: the series is its yardstick, not its forecast.",
    sources: [SERIES_SOURCE],
  },
  {
    id: "nozzle",
    name: "Ka propellers in nozzle 19A",
    idea: "The same for propellers with wide tips in a nozzle that carries part of the thrust: whole, nozzle and blades are told apart. Again what a smooth, well-made set would do.",
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
      "thrust: Z ½ ρ W² c (C_L cos φ − C_D sin φ) = 4π r ρ F u |V + u|; torque alike with the swirl v",
      "F = F_tip F_hub,  F_tip = (2/π) arccos exp(−Z (R − r)/(2 r |sin φ|)),  F_hub alike with (r − r_h)/(2 r_h)",
    ],
    range:
      "Any advance ratio, at rest, as a windmill, turning either way, of a propeller that turns. No nozzle. Rings do not feel each other; skew and rake are left out of the flow. Where a windmill or a propeller driven back meets its own stream momentum theory ends, and an empirical line is used and told.",
    sure: "Slender blades: 6 % in thrust and power on the measured research propellers. Broad blades curve the flow, of which only a part is allowed for: at rest, against the B series at Reynolds numbers of 1e6 to 4e6, 9 % too little to 26 % too much thrust, and torque from 30 % too little at high pitch to 20 % too much at low pitch. Scale through a measured point.",
    sources: [
      "Ning, A simple solution method for the blade element momentum equations with guaranteed convergence, Wind Energy 17 (2014) 1327",
      "Ning, Using blade element momentum methods with gradient-based design optimization, Structural and Multidisciplinary Optimization 64 (2021)",
      "Glauert, Airplane Propellers (1935); tip factor: Prandtl, in Betz, Schraubenpropeller mit geringstem Energieverlust (1919); windmill line: Buhl, NREL/TP-500-36834 (2005)",
    ],
  },
  {
    id: "section",
    name: "Sections of small, printed blades",
    idea: "Lift from thin-aerofoil theory with what thickness adds and the boundary layer takes; stall into a flat plate, later near the hub; profile drag as the larger of a smooth blend of laminar and turbulent friction and a rough line. Its numbers were chosen once on one research propeller and tested on another.",
    equations: [
      "C_L = a (α − α_0),  a = 2π k (1 + 0.77 t/c)/(1 + 33/√Re),  α_0 = −2 k f/c,  k = (AR + 2)/(2 + √(AR² + 4))",
      "smooth: C_D = (1 + 2 t/c) [(2.12 · 2.656/√Re)⁴ + (2 C_t)⁴]^¼,  C_t = 0.044/Re^⅙ − 5/Re^⅔, held at its peak below 2.07e5",
      "rough: C_D = 2 (1 + 2 t/c) (1.89 + 1.62 log₁₀(c/k_p))^−2.5,  c/k_p at least 50",
      "with lift: C_D grows by (0.15/a)(C_L − C_L0)² and, towards stall, by 32.4/√Re",
    ],
    range:
      "Blade Reynolds number from 5e3 (below: told as a rough guide); camber up to a fifth of the chord. A measured polar from a file takes its place.",
    sure: "The least certain part of every prediction here. The table below holds it against measurements.",
    sources: [
      RESEARCH_SOURCE,
      "ITTC Recommended Procedure 7.5-02-03-01.4; Blasius (1908); Abbott & von Doenhoff, Theory of Wing Sections (1959), chapters 3 and 4",
      "k: Helmbold, Jahrbuch der deutschen Luftfahrtforschung (1942), over Prandtl's lifting line; its use for blades is our own, held against the B series",
      "Stall near the hub: Snel, Houwink & Bosschers, ECN-C-93-052 (1993), from memory",
      "Viterna & Corrigan, Fixed pitch rotor performance of large horizontal axis wind turbines, NASA CP-2230 (1982)",
    ],
  },
  {
    id: "losses",
    name: "Account of the power",
    idea: "What the blade takes from the shaft is useful, left in the stream along the shaft, left in it as rotation, or rubbed away; ring by ring the four add up exactly. What an even disc would need for the same thrust is the ideal; the rest of the stream's share is the price of few blades and of uneven load. A surface is fitted that makes the measured thrust and torque, and the losses in its proportions fill what the measured merit leaves.",
    equations: [
      "each ring: Ω r F_t = T V + T u + F_t v + D W  (u, v the induced velocities, W the speed at the blade, D its drag)",
      "FM = K_T^1.5 / (C_P √(π/2)),  T/T_max = FM^⅔,  over a series propeller at equal power: (FM/FM_s)^⅔",
    ],
    range:
      "At rest, open propellers. Where no surface makes the measurement, the split is only scaled to the merit, and told.",
    sure: "The share of the ideal and the ratio to the series are as sure as the measurement. The split of the rest is that of blade elements: its intervals are wide, and section drag takes up what the others miss.",
    sources: [
      "Glauert, Airplane Propellers (1935), energy of the slipstream; Carlton, Marine Propellers and Propulsion, chapter 8",
      "Combining the doubts: JCGM 100:2008, 5.2",
    ],
  },
  {
    id: "finish",
    name: "Finish, fitted from measurement",
    idea: "The lift factor and the drag of the sections are moved until blade elements give the K_T and K_Q that were measured, for each finish. What remains to a smooth surface is the most further smoothing can bring.",
    equations: ["K_T(k_L, k_D), K_Q(k_L, k_D) = measured; doubt carried by the derivatives"],
    range:
      "Lift factor 0.2 to 1.3 (common practice, no source), drag not below the laminar floor. Outside, the answer is that no surface explains the measurement. Broad blades are tied to the tests of the B screw most like them.",
    sure: "Differences between two finishes on one blade are surer than each alone: errors of stand, diameter and section model cancel in part. Intervals keep to what can be, drag to that of two laminar sides and roughness to a smooth section, by the profiled likelihood ratio; 2000 simulated measurements of each of five surfaces were covered in 94 to 96 %.",
    sources: [
      "Interval beside a bound: Feldman & Cousins, Physical Review D 57 (1998) 3873",
      "Section model above; roughness of grits after ISO 6344; layer heights: common practice, no source",
    ],
  },
  {
    id: "speed",
    name: "Thrust against speed",
    idea: "From most to least trusted: the variant's own run at speed; a series or blade elements scaled through its bollard point; momentum theory with the merit kept.",
    equations: ["T = K_T(J) ρ n² D⁴,  P = 2π K_Q(J) ρ n³ D⁵,  J = V/(n D)"],
    range:
      "From rest to where the thrust ends, at a fixed rotation rate or a fixed shaft power. Momentum theory alone does not know the pitch, so not that end. Blade elements take the Reynolds number of the rotation rate held, or of the one that takes the power at rest.",
    sure: "The band holds the doubt of the bollard point, the spread of the candidate curves and a part for the unmeasured shape, which grows with J. At fixed power an error in K_Q changes the rotation rate; it goes with that in K_T (correlation 0.8 of the shape, from the same propellers). Where the band passes the momentum limit a note says so. Only a run at speed makes it narrow.",
    sources: [
      "Scaling a curve by one factor: common practice, no source; size of the shape part from one published small propeller at two rotation rates against the series",
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
    sure: "Density is sure. The Reynolds factor is the middle between drag alone, the trend of one small research propeller and, where the blade shape is known, blade elements; the half-width between them over √3 is its doubt. Return flow in a tank is a bound of the right size (common practice, no source).",
    sources: ["ITTC Recommended Procedure 7.5-02-03-01.4 (the factors 0.3 and 0.25 from memory)", RESEARCH_SOURCE],
  },
  {
    id: "cavitation",
    name: "Cavitation",
    idea: "Pressure over vapour pressure at the blade against how hard the blade is loaded; above a limit line bubbles form on the back.",
    equations: [
      "σ_0.7 = (p_atm + ρ g h − p_v) / (½ ρ V_R²),  τ_c = T / (½ ρ A_P V_R²)",
      "V_R² = V² + (0.7 π n D)²,  A_P = A_E (1.067 − 0.229 P/D)",
      "Keller: A_E/A_0 at least (1.3 + 0.3 Z) T / ((p_0 − p_v) D²) + k",
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
      "Δh = (V_d² − V²)/(2 g),  h = R + Δh,  V_d the mean velocity through the disc by momentum theory",
      "h = D (1 + 2.3 (V_d − V)/√(g D)) against vortices;  h = 1.5 D of open-water tests",
      "thrust left near the surface: β = 1 − 0.675 (1 − 0.769 h/R)^1.258 for h below 1.3 R",
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
    equations: [
      "T = K_T(J) ρ n² D⁴ and P = 2π K_Q(J) ρ n³ D⁵ with n or D open: K_T = c J² or K_Q = c J³ at fixed D, J⁴ and J⁵ at fixed n",
    ],
    range: "As the series. A best at an edge of the range is told.",
    sure: "As the series, which says what a smooth, well-made propeller would do. A motor wants a torque and rate of its own: check the pair on Drive.",
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
