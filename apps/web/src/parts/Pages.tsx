import { Button } from './Button.tsx';
import styles from './pages.module.css';

/** Steps through the pages of a list. Nothing where there is one page. */
export function Pages({
  page,
  pages,
  onPage,
}: {
  page: number;
  pages: number;
  onPage: (page: number) => void;
}) {
  if (pages <= 1) return null;
  return (
    <nav className={styles.pages} aria-label="Pages of the list">
      <Button onPress={() => onPage(page - 1)} isDisabled={page <= 1}>
        Page before
      </Button>
      <span>
        Page {page} of {pages}
      </span>
      <Button onPress={() => onPage(page + 1)} isDisabled={page >= pages}>
        Next page
      </Button>
    </nav>
  );
}
