import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { useWide } from '../view/use-wide.ts';
import styles from './two-columns.module.css';

/**
 * Parts of a page by name. Where there is room: `main` and `side` next to each other. Where there is none: one below
 * the other as `narrow` has them, so that eye, ear and Tab key meet them in one order. A screen that is turned moves the
 * parts and keeps what was typed and opened in them.
 */
export function TwoColumns<Name extends string>({
  parts,
  main,
  side,
  narrow,
  below = [],
  even = false,
}: {
  parts: Record<Name, ReactNode>;
  main: readonly Name[];
  side: readonly Name[];
  narrow: readonly Name[];
  /** Under both columns, as wide as they are together. */
  below?: readonly Name[];
  /** The side has pictures of its own and is nearly as wide. */
  even?: boolean;
}) {
  const isWide = useWide();
  const [holders] = useState(() => new Map<Name, HTMLElement>());
  const holderOf = (name: Name) => {
    const holder = holders.get(name) ?? newHolder();
    holders.set(name, holder);
    return holder;
  };
  const columns = isWide ? [main, side, below] : [narrow, [], []];
  return (
    <>
      {/* Before the parts: what these measure when they come must stand in the page by then. */}
      <Columns columns={columns.map((names) => names.map(holderOf))} look={isWide ? lookOf(even) : ''} />
      {columns.flat().map((name) => createPortal(parts[name], holderOf(name), name))}
    </>
  );
}

const lookOf = (even: boolean) => (even ? styles.even : styles.columns) ?? '';

function newHolder(): HTMLElement {
  const holder = document.createElement('div');
  holder.className = styles.holder ?? '';
  return holder;
}

function Columns({ columns: [main, side, below], look }: { columns: HTMLElement[][]; look: string }) {
  const [first, second, third] = [
    useRef<HTMLDivElement>(null),
    useRef<HTMLDivElement>(null),
    useRef<HTMLDivElement>(null),
  ];
  useLayoutEffect(() => {
    const focused = document.activeElement;
    fill(first.current!, main!);
    fill(second.current!, side!);
    fill(third.current!, below!);
    // Whatever is moved loses it.
    if (focused instanceof HTMLElement && focused !== document.activeElement)
      focused.focus({ preventScroll: true });
  });
  return (
    <>
      <div className={look}>
        <div ref={first} className={styles.column} />
        <div ref={second} className={styles.column} />
      </div>
      <div ref={third} className={`${styles.column} ${styles.below}`} />
    </>
  );
}

/** Puts these in this order into a column, and moves none that is in its place. */
function fill(column: HTMLElement, wanted: HTMLElement[]): void {
  let place = column.firstElementChild;
  for (const one of wanted) {
    if (one === place) place = one.nextElementSibling;
    else column.insertBefore(one, place);
  }
  while (place !== null) {
    const next: Element | null = place.nextElementSibling;
    place.remove();
    place = next;
  }
}
