/** The station along its kerb, to scale, as the papers draw it; a button opens it at the page's full width. */
import type { StationLayout } from '@halfcup/core';
import { formOf } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Picture } from '../../papers/picture.ts';
import { type OpenPlan, useStore } from '../../state/store/store.ts';
import { ITEM_WORD } from '../../words.ts';

/** Milliseconds for which a station that is being moved must rest before it is drawn again. */
const REST = 200;

interface Pictures {
  readonly panel: Picture;
  readonly full: () => Picture;
}

function usePictures(open: OpenPlan, station: StationLayout, index: number): Pictures | null {
  const store = useStore();
  const units = store.units.value;
  const moving = store.trial.value !== null;
  const [pictures, setPictures] = useState<Pictures | null>(null);
  useEffect(() => {
    let wanted = true;
    const timer = setTimeout(
      async () => {
        const { pictureOf } = await import('../../papers/picture.ts');
        if (!wanted) return;
        const draw = (size: 'panel' | 'full'): Picture => pictureOf(open.analysis, station, index, units, size);
        setPictures({ panel: draw('panel'), full: () => draw('full') });
      },
      moving ? REST : 0,
    );
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [open.analysis, station, index, units, moving]);
  return pictures;
}

export function StationPicture({
  open,
  station,
  index,
}: {
  readonly open: OpenPlan;
  readonly station: StationLayout;
  /** Of the direction among the station's. */
  readonly index: number;
}): JSX.Element | null {
  const pictures = usePictures(open, station, index);
  const sheet = useRef<HTMLDialogElement>(null);
  const [full, setFull] = useState<Picture | null>(null);
  const direction = station.directions[index];
  if (direction === undefined || direction.items.length === 0 || pictures === null) return null;
  const items = direction.items.toSorted((a, b) => a.from - b.from).filter(({ kind }) => formOf(kind) !== 'line');
  const side = direction.side === 'unclear' ? '' : ` on the ${direction.side}-hand side`;
  const says = `What stands${side}, in running order: ${items.map(({ kind }) => ITEM_WORD[kind]).join(', ')}`;
  const { src, width, height } = pictures.panel;
  return (
    <div class="picture">
      <img src={src} width={width} height={height} alt={says} />
      <button
        type="button"
        class="link-button"
        onClick={() => {
          setFull(pictures.full());
          sheet.current?.showModal();
        }}
      >
        Full width
      </button>
      <dialog ref={sheet} class="picture-full" aria-label={`${station.name}, drawn to scale`}>
        <div class="picture-scroll">{full === null ? null : <img src={full.src} alt={says} />}</div>
        <button type="button" onClick={() => sheet.current?.close()}>
          Close
        </button>
      </dialog>
    </div>
  );
}
