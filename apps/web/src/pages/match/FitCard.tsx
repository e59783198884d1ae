import type { MatchPage } from '@pullbook/views/match';
import { Card } from '../../parts/Card.tsx';
import figures from '../../parts/figures.module.css';
import styles from './match.module.css';

/** How the match was adapted to the engine's own boosted pulls, what is left over, and what that looks like. */
export function FitCard({ fits }: { fits: MatchPage['fit'] }) {
  if (fits.length === 0) {
    return (
      <Card title="Fit">
        <p className={styles.plain}>
          Not adapted to a boosted pull yet: it stands as the map and the sheet have it, and its bands are
          wide. One counted pull with the supercharger narrows them.
        </p>
      </Card>
    );
  }
  return fits.map(({ name, parameters, residuals, readings }) => (
    <Card key={name} title={`Fit: ${name}`}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its place is scrolled by keys too */}
      <section className={figures.scroll} aria-label={`Figures: fit of ${name}`} tabIndex={0}>
        <table className={figures.figures}>
          <thead>
            <tr>
              <td />
              <th scope="col">Before</th>
              <th scope="col">Fitted</th>
            </tr>
          </thead>
          <tbody>
            {parameters.map((one) => (
              <tr key={one.name}>
                <th scope="row">
                  {one.name} <span className={figures.unit}>{one.from}</span>
                </th>
                <td>{one.prior}</td>
                <td>{one.value}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <ul className={styles.lines}>
        {residuals.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {readings.length > 0 && (
        <ul className={styles.lines}>
          {readings.map(({ text, wouldSettle }) => (
            <li key={text}>
              {text}
              {wouldSettle !== '' && <span className={styles.soft}> {wouldSettle}</span>}
            </li>
          ))}
        </ul>
      )}
    </Card>
  ));
}
