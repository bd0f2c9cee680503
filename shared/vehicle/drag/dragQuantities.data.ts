import type { DragQuantity } from "../../model/vehicle/dragChannels.ts";
import type { Dimension } from "../../quantity/units.data.ts";

interface QuantityWords {
  readonly dimension: Dimension;
  /** What a person calls it. */
  readonly name: string;
  /** Words of a header, lower case without accents, that name it. */
  readonly strong: readonly string[];
  /** Words and letters that name it only where nothing better does. */
  readonly weak: readonly string[];
}

const words = (list: string): readonly string[] => list.split("|");

/**
 * What builders write above the columns of tow, coast-down and dive logs: English, German, French, Spanish and Dutch.
 * Common practice, no source.
 */
export const DRAG_QUANTITIES: { readonly [Q in DragQuantity]: QuantityWords } = {
  time: {
    dimension: "time",
    name: "time",
    strong: words("time|timestamp|time stamp|elapsed|elapsed time|zeit|zeitstempel|temps|tiempo|tijd|millis|micros"),
    weak: words("t|ts|stamp|clock|seconds|sec|secs|datetime|uhrzeit|heure|hora"),
  },
  speed: {
    dimension: "speed",
    name: "speed",
    strong: words(
      "speed|velocity|tow speed|towing speed|water speed|log speed|speed through water|stw|surge speed|geschwindigkeit|fahrt|schleppgeschwindigkeit|vitesse|velocidad|snelheid",
    ),
    weak: words("v|u|spd|vel|knots|carriage|carriage speed|flow"),
  },
  force: {
    dimension: "massAsForce",
    name: "force",
    strong: words(
      "force|tow force|towing force|drag|resistance|load cell|loadcell|tension|line tension|pull|kraft|zugkraft|schleppkraft|widerstand|traction|fuerza|arrastre|kracht|trekkracht|weerstand",
    ),
    weak: words("f|fx|d|load|weight|scale|cell|poids|peso|gewicht|last"),
  },
  distance: {
    dimension: "length",
    name: "distance",
    strong: words("distance|dist|way|position|range|travel|strecke|weg|entfernung|afstand|distancia|trajet|posicion"),
    weak: words("x|s|pos|metres|meters"),
  },
  depth: {
    dimension: "length",
    name: "depth",
    strong: words("depth|water depth|tiefe|tauchtiefe|profondeur|profundidad|diepte"),
    weak: words("z|h|dpt"),
  },
};

/** Words that make a column second choice: it is not the plain measured quantity. */
export const SECOND_CHOICE: readonly string[] = words(
  "raw|target|set|setpoint|command|std|stdev|sd|sigma|uncertainty|min|max|peak|tare|offset|counts|adc|error|expected|rpm|motor|wind|sound|vertical|air",
);
