import type { Budget } from '../../plan/errors.ts'
import { figure } from '../../spec/figures.ts'
import type { Units } from '../../spec/spec.ts'

const plusMinus = (mm: number, units: Units, lean: 'up' | 'down'): string =>
  `± ${figure(mm, units, { fit: true, lean })}`

/** How far depth, width and place of the slot may come out off, and from what. */
export const OutBy = ({ budgets, by, units }: { budgets: readonly Budget[]; by: string; units: Units }) => (
  <details class="out-by">
    <summary>{by}: what it may come out by</summary>
    <table class="ways">
      <thead>
        <tr>
          <td />
          <th scope="col">Likely</th>
          <th scope="col">All against it</th>
          <th scope="col">Allowed</th>
          <th scope="col">Most of it from</th>
        </tr>
      </thead>
      <tbody>
        {budgets.map(({ of, likely, worst, allowed, contributions }) => (
          <tr key={of}>
            <th scope="row">{of.charAt(0).toUpperCase() + of.slice(1)}</th>
            <td>{plusMinus(likely, units, 'up')}</td>
            <td>{plusMinus(worst, units, 'up')}</td>
            <td>{plusMinus(allowed, units, 'down')}</td>
            <td class="from">
              {contributions
                .slice(0, 2)
                .map((each) => `${each.of} ${figure(each.by, units, { fit: true, lean: 'up' })}`)
                .join('; ')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
)
