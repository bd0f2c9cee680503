import { CROSS, Icon } from "./Icon.tsx";
import { dismiss, toasts } from "./toast.ts";

/** Short messages at the lower edge. They are spoken, and what they offer is also in the header. */
export function Toasts() {
  return (
    <section class="toasts" aria-label="Messages" aria-live="polite">
      {toasts.value.map(({ id, tone, text, action }) => (
        <div key={id} class={`toast toast-${tone}`}>
          <span>{text}</span>
          {action && (
            <button
              type="button"
              onClick={() => {
                dismiss(id);
                action.run();
              }}
            >
              {action.label}
            </button>
          )}
          <button type="button" class="icon" aria-label="Close the message" onClick={() => dismiss(id)}>
            <Icon path={CROSS} size={16} />
          </button>
        </div>
      ))}
    </section>
  );
}
