import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading } from 'react-aria-components/Dialog';
import { Modal, ModalOverlay } from 'react-aria-components/Modal';
import styles from './dialog.module.css';

/** A question over the page. Escape and a press beside it close it; the focus goes back where it was. */
export function Dialog({
  title,
  open,
  onClose,
  wide = false,
  children,
}: {
  title: string;
  open: boolean;
  onClose: () => void;
  wide?: boolean;
  children: ReactNode;
}) {
  return (
    <ModalOverlay
      isOpen={open}
      onOpenChange={(isOpen) => !isOpen && onClose()}
      isDismissable
      className={styles.ground ?? ''}
    >
      <Modal className={`${styles.modal} ${wide ? styles.wide : ''}`}>
        <AriaDialog className={styles.dialog ?? ''}>
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}

export function DialogActions({ children }: { children: ReactNode }) {
  return <div className={styles.actions}>{children}</div>;
}
