interface FormButtonsProps {
  readonly onCancel: () => void;
  /** Why it can not be saved yet, once that was tried; empty when it can. */
  readonly gap: string;
}

/** Save and Cancel at the end of a form, and what is still missing beside them. */
export function FormButtons({ onCancel, gap }: FormButtonsProps) {
  return (
    <div class="row form-buttons">
      <button type="submit" class="primary">
        Save
      </button>
      <button type="button" onClick={onCancel}>
        Cancel
      </button>
      {gap !== "" && (
        <span class="field-message" role="alert">
          {gap}
        </span>
      )}
    </div>
  );
}
