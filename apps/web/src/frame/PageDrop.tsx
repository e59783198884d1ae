import { useNavigate } from '@tanstack/react-router';
import { useEffect, useEffectEvent, useState } from 'react';
import { bringFiles } from '../pages/add-pulls/brought-files.ts';
import { bringBundle, isBundle } from '../pages/open-bundle/brought-bundle.ts';
import styles from './frame.module.css';

const bringsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;

/** Files dropped anywhere on any page go to the page that adds pulls, a bundle to the one that opens it, but where a place takes them itself. */
export function PageDrop() {
  const [over, setOver] = useState(false);
  const navigate = useNavigate();

  const drop = useEffectEvent((event: DragEvent) => {
    if (!bringsFiles(event)) return;
    setOver(false);
    // A place of the page that takes files itself has taken them.
    if (event.defaultPrevented) return;
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length === 0) return;
    const bundle = files.find(isBundle);
    if (files.length === 1 && bundle !== undefined) {
      bringBundle(bundle);
      void navigate({ to: '/open' });
      return;
    }
    bringFiles(files);
    void navigate({ to: '/add' });
  });

  useEffect(() => {
    const dragOver = (event: DragEvent) => {
      if (!bringsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const dragLeave = (event: DragEvent) => {
      // Leaving the window: there is nothing the pointer goes to.
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => drop(event);
    window.addEventListener('dragover', dragOver);
    window.addEventListener('dragleave', dragLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', dragOver);
      window.removeEventListener('dragleave', dragLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, []);

  return over ? <div className={styles.drop}>Drop the files to read them</div> : null;
}
