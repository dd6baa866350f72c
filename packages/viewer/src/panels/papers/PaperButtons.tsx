/** What is done with the paper that is seen. */
import type { PrintedPaper } from '@halfcup/core/papers';
import type { JSX } from 'preact';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { savedName } from '../../state/view/fileNames.ts';
import { exportFile } from '../../storage/saveFile.ts';
import { reasonOf } from '../../trouble.ts';

interface PictureProps {
  readonly open: OpenPlan;
  readonly afresh: () => Promise<PrintedPaper>;
}

/** The map of the overview as a picture of its own. */
export function PictureButtons({ open, afresh }: PictureProps): JSX.Element {
  const store = useStore();
  const saveAs = async (kind: 'svg' | 'png'): Promise<void> => {
    const { mapDrawing, mapPicture } = await import('../../papers/pictures.ts');
    const drawing = mapDrawing((await afresh()).html);
    if (drawing === null) return;
    try {
      if (kind === 'png')
        await exportFile(store, savedName(open, 'overview', '.png'), await mapPicture(drawing), [
          'Picture',
          'image/png',
          '.png',
        ]);
      else
        await exportFile(store, savedName(open, 'overview', '.svg'), new Blob([drawing], { type: 'image/svg+xml' }), [
          'Drawing',
          'image/svg+xml',
          '.svg',
        ]);
    } catch (error) {
      store.notice.value = { text: `The picture could not be made: ${reasonOf(error)}.` };
    }
  };
  return (
    <>
      <button type="button" onClick={() => void saveAs('svg')}>
        Map as SVG
      </button>
      <button type="button" onClick={() => void saveAs('png')}>
        Map as PNG
      </button>
    </>
  );
}

/** Prints what is seen, or saves it. */
export function PaperButtons({ open, afresh }: PictureProps): JSX.Element {
  const store = useStore();
  const print = async (): Promise<void> => {
    const { printPaper } = await import('../../papers/printPaper.ts');
    await printPaper((await afresh()).html);
  };
  const save = async (): Promise<void> => {
    const { name: file, html } = await afresh();
    const kind = ['Paper', 'text/html', '.html'] as const;
    await exportFile(
      store,
      savedName(open, file.replace(/\.html$/u, ''), '.html'),
      new Blob([html], { type: kind[1] }),
      kind,
    );
  };
  return (
    <>
      <button type="button" onClick={() => void print()}>
        Print
      </button>
      <button type="button" onClick={() => void save()}>
        Save as HTML
      </button>
    </>
  );
}
