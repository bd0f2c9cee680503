import { render } from "preact";
import { Shell } from "./app/Shell.tsx";
import { openFirstProject } from "./app/session.ts";
import { followKeys } from "./app/undo.ts";
import "./style/tokens.css";
import "./style/base.css";
import "./style/shell.css";
import "./style/controls.css";
import "./style/print.css";

const page = document.getElementById("page");
if (page) render(<Shell />, page);
followKeys();
void openFirstProject();
