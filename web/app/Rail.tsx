import { SCREENS } from "../views/registry.ts";
import { Icon } from "./Icon.tsx";
import { addressOf } from "./route.ts";

/** The screens: a rail at the left, a bar at the bottom of a narrow window. */
export function Rail({ current }: { readonly current: string }) {
  return (
    <nav class="rail" aria-label="Screens">
      <ul>
        {SCREENS.map(({ id, label, icon }) => (
          <li key={id}>
            <a href={addressOf(id)} aria-current={id === current ? "page" : undefined}>
              <Icon path={icon} size={22} />
              <span>{label}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
