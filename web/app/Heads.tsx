/** The name of a column whose cells are numbers: it stands to the right, as they do. */
interface NumberColumn {
  readonly numbers: string;
}

/** The head of a table. */
export function Heads({ columns }: { readonly columns: readonly (string | NumberColumn)[] }) {
  return (
    <thead>
      <tr>
        {columns.map((column) =>
          typeof column === "string" ? (
            <th key={column} scope="col">
              {column}
            </th>
          ) : (
            <th key={column.numbers} scope="col" class="number">
              {column.numbers}
            </th>
          ),
        )}
      </tr>
    </thead>
  );
}
