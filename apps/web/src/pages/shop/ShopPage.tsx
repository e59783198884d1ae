import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { apiAddress } from '../../api/request.ts';
import { settingsQuestion } from '../../api/shop.ts';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { Backup } from './Backup.tsx';
import { Cells } from './Cells.tsx';
import { HowItScatters } from './HowItScatters.tsx';
import { LayoutsMet } from './LayoutsMet.tsx';
import { NameAndMark } from './NameAndMark.tsx';
import { Packages } from './Packages.tsx';
import { StandardAndBins } from './StandardAndBins.tsx';
import styles from './shop.module.css';
import { UnitsAndLooks } from './UnitsAndLooks.tsx';

/** What the shop settled once: for every machine, and for the command line. */
export default function ShopPage() {
  const settings = useQuery(settingsQuestion());
  const { data } = settings;
  return (
    <>
      <PageHead title="Shop">
        {data !== undefined && (data.mark !== null || data.shopName !== '') && (
          <p className={styles.sign}>
            {data.shopName}
            {data.mark !== null && (
              <img
                className={styles.mark}
                // Its size tells an old mark from a new one.
                src={apiAddress('/settings/mark', { of: data.mark.byteLength })}
                width={data.mark.width}
                height={data.mark.height}
                alt="The shop’s mark"
              />
            )}
          </p>
        )}
      </PageHead>
      <p className={styles.lead}>
        Settled once, here: it holds on every screen and on the command line. What figures are held against
        are the <Link to="/rules">rules</Link>. What left the shop, and what of it is no longer so, stands in
        the <Link to="/publications">publications</Link>. What can be bought, when somebody asks for a power,
        stands in the <Link to="/shop/parts">parts list</Link>.
      </p>
      <Trouble of={settings.error} />
      {settings.isPending && <Waiting />}
      {data !== undefined && (
        <TwoColumns
          parts={{
            cells: <Cells />,
            scatter: <HowItScatters settings={data} />,
            layouts: <LayoutsMet />,
            packages: <Packages />,
            looks: <UnitsAndLooks settings={data} />,
            standard: <StandardAndBins settings={data} />,
            name: <NameAndMark settings={data} />,
            backup: <Backup settings={data} />,
          }}
          main={['cells', 'scatter', 'layouts', 'packages']}
          side={['looks', 'standard', 'name', 'backup']}
          narrow={['looks', 'standard', 'cells', 'scatter', 'name', 'backup', 'layouts', 'packages']}
        />
      )}
    </>
  );
}
