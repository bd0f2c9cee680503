import type { ColumnRole } from "../model/recipe.ts";

/** Roles that a header can name. */
export type NamedRole = Exclude<ColumnRole, "ignore">;

interface RoleWords {
  /** Words that name the role by themselves. */
  readonly strong: readonly string[];
  /** Words and letters that name it only where nothing better does. */
  readonly weak: readonly string[];
}

/**
 * What builders write above their columns, in lower case without accents, words parted by one blank.
 * English, German, French, Spanish and Dutch. Common practice, no source.
 */
export const ROLE_WORDS: { readonly [R in NamedRole]: RoleWords } = {
  time: {
    strong: words(
      "time|timestamp|time stamp|datetime|elapsed|elapsed time|zeit|zeitstempel|temps|tiempo|tijd|millis|micros",
    ),
    weak: words("t|ts|stamp|datum|fecha|clock|epoch|date|seconds|sec|secs|msec|uhrzeit|heure|hora|dauer"),
  },
  command: {
    strong: words(
      "throttle|command|cmd|pwm|pulse width|pulse|servo|setpoint|demand|consigne|commande|mando|stuursignaal|acelerador|stellsignal|gashebel|dshot",
    ),
    weak: words("esc|signal|gas|puls|duty|duty cycle|input|stick|gaz|us|thr"),
  },
  thrust: {
    strong: words(
      "thrust|force|load cell|loadcell|bollard|bollard pull|schub|schubkraft|kraft|poussee|empuje|fuerza|stuwkracht|kracht|trekkracht|standschub|zugkraft|traction",
    ),
    weak: words("load|weight|pull|scale|cell|fx|fz|fy|f|hx711|gewicht|peso|poids|last|grams|gramm|thrst|push|ld"),
  },
  torque: {
    strong: words("torque|drehmoment|couple|par motor|koppel|torsion"),
    weak: words("moment|q|par|mz|mx|reaction"),
  },
  rotationRate: {
    strong: words(
      "rpm|erpm|rps|revs|rotation rate|rotation speed|rotational speed|motor speed|shaft speed|drehzahl|regime|tours|toerental|tacho|tach|tachometer|revoluciones|revolutions|vitesse de rotation|velocidad de giro|umdrehungen|propeller speed|prop speed",
    ),
    weak: words("speed|n|omega|w|rotation|vitesse|velocidad|freq|frequency|hall|tr|spd"),
  },
  voltage: {
    strong: words(
      "voltage|volt|volts|vbat|vbatt|spannung|tension|voltaje|tension electrique|spanning|bus voltage|vbus|vin|u bat|ubat",
    ),
    weak: words("v|u|battery|batt|bat|supply|vlt|akku|bateria|batterie|accu"),
  },
  current: {
    strong: words(
      "current|amps|amp|ampere|amperes|strom|stromstarke|courant|intensite|corriente|intensidad|stroom|stroomsterkte|ibat|ibatt|i bat|amperage",
    ),
    weak: words("i|a|shunt|cur"),
  },
  electricalPower: {
    strong: words(
      "power|watt|watts|wattage|electrical power|leistung|puissance|potencia|vermogen|pelec|p el|input power",
    ),
    weak: words("p|pin|w"),
  },
  temperature: {
    strong: words("temperature|temp|temperatur|temperatura|temperatuur|water temp|motor temp|esc temp"),
    weak: words("tmp|thermistor|ntc|wassertemp|celsius|degc"),
  },
  advanceSpeed: {
    strong: words(
      "advance speed|speed of advance|flow speed|flow velocity|water speed|tow speed|towing speed|carriage|carriage speed|log speed|airspeed|air speed|inflow|anstromung|stromungsgeschwindigkeit|fahrt|schleppgeschwindigkeit|vitesse d avance|vitesse de l eau|velocidad de avance|vaarsnelheid",
    ),
    weak: words("speed|flow|tow|current meter|flow meter|knots|va|vitesse|velocidad|geschwindigkeit|snelheid"),
  },
};

/** Words that say a column is something else, however its other words read. */
export const OTHER_WORDS: readonly string[] = words(
  "efficiency|wirkungsgrad|rendement|g w|gf w|n w|index|idx|sample|samples|row|record|nr|no|id|counter|vibration|accel|mah|wh|charge|ladung|" +
    "energy|energie|pressure|humidity|shaft power|mechanical power|mech power|output power|" +
    "wellenleistung|status|state|mode|flag|armed|note|notes|comment|comments|step|kv|pole pairs|sample rate|resistance|cell voltage|crc|checksum",
);

/** Words that make a column second choice for its role: the quantity is not the plain measured one. */
export const SECOND_CHOICE_WORDS: readonly string[] = words(
  "raw|target|set|std|stdev|stddev|sd|sigma|uncertainty|min|max|peak|tare|offset|counts|adc|filtered|smoothed|smooth|avg|average|mean|2|ref|reference|expected|error",
);

function words(list: string): readonly string[] {
  return list.split("|");
}
