import { TableBox } from "../../app/TableBox.tsx";

interface FindingsProps {
  readonly caption: string;
  readonly rows: readonly { readonly name: string; readonly value: string; readonly how: string }[];
}

/** Numbers by name with where each comes from. */
export function Findings({ caption, rows }: FindingsProps) {
  return (
    <TableBox label={caption}>
      <table>
        <caption class="visually-hidden">{caption}</caption>
        <tbody>
          {rows.map(({ name, value, how }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td class="number">{value}</td>
              <td class="muted">{how}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
