import type { PullPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import styles from '../../parts/figures.module.css';

/** Every channel as read, with its range and where it comes from. */
export function ChannelsTable({ channels }: { channels: PullPage['channels'] }) {
  if (channels.length === 0) return null;
  return (
    <Card title="Channels">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its place is scrolled by keys too */}
      <section className={styles.scroll} aria-label="Figures: channels" tabIndex={0}>
        <table className={styles.figures}>
          <thead>
            <tr>
              <th scope="row">As in the file</th>
              <th scope="col" className={styles.words}>
                Is
              </th>
              <th scope="col" className={styles.words}>
                Unit
              </th>
              <th scope="col">Values</th>
              <th scope="col">Lowest</th>
              <th scope="col">Highest</th>
              <th scope="col" className={styles.words}>
                Origin
              </th>
            </tr>
          </thead>
          <tbody>
            {channels.map((channel) => (
              <tr key={channel.name}>
                <th scope="row">{channel.name}</th>
                <td className={styles.words}>{channel.meaning}</td>
                <td className={styles.words}>{channel.unit}</td>
                <td>{channel.count}</td>
                <td>{channel.low}</td>
                <td>{channel.high}</td>
                <td className={styles.words}>{channel.origin}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </Card>
  );
}
