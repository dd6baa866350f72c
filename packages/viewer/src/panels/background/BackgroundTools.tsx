/** What is drawn under the course: a choice that fetches nothing unless somebody types an address. */
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { addressed, chooseBackground } from '../../state/view/background.ts';
import type { Background } from '../../state/store/backgrounds.ts';
import { useStore } from '../../state/store/store.ts';
import { takeStreets } from '../../work/streets.ts';
import { useUnfolded } from '../ui/useUnfolded.ts';

const KINDS: readonly (readonly [Background['kind'] | 'address', string])[] = [
  ['plan', 'Map and drawing in the plan'],
  ['paper', 'Plain, with longitude and latitude lines'],
  ['address', 'Online map (URL)'],
  ['tiles', 'Map file on this device (.pmtiles)'],
];

function AddressForm({ now }: { readonly now: Background }): JSX.Element {
  const store = useStore();
  const given = 'address' in now ? now : { address: '', credit: '' };
  const [address, setAddress] = useState(given.address);
  const [credit, setCredit] = useState(given.credit);
  const [trouble, setTrouble] = useState<{ readonly field: string; readonly message: string } | null>(null);
  const use = (event: Event): void => {
    event.preventDefault();
    const checked = addressed(address, credit);
    setTrouble(checked.ok ? null : checked);
    if (checked.ok) chooseBackground(store, checked.background);
  };
  const field = (
    name: 'address' | 'credit',
    label: string,
    value: string,
    put: (text: string) => void,
  ): JSX.Element => (
    <label class="stack">
      {label}
      <input
        type="text"
        value={value}
        spellcheck={false}
        autocomplete="off"
        aria-invalid={trouble?.field === name}
        aria-describedby={trouble?.field === name ? 'background-trouble' : undefined}
        onInput={(event) => put(event.currentTarget.value)}
      />
      {trouble?.field === name ? (
        <span id="background-trouble" class="field-trouble">
          {trouble.message}
        </span>
      ) : null}
    </label>
  );
  return (
    <form class="background-address" noValidate onSubmit={use}>
      {field('address', 'URL of a map style, or of tiles with {z}, {x} and {y}', address, setAddress)}
      {field('credit', 'Credit line that the map’s owner asks for', credit, setCredit)}
      <p class="soft">
        This page will load the area you look at from that server, so the server learns where your course is. Its
        owner’s terms apply. Your plan is not sent.
      </p>
      <button type="submit">Use this map</button>
    </form>
  );
}

/** A map of streets for the open plan. */
function StreetsChoice(): JSX.Element {
  const store = useStore();
  const has = store.open.value?.analysis.ground !== undefined;
  return (
    <label class="stack">
      {has ? 'Other streets from a map file' : 'Streets from a map file'} (.osm, .osm.gz, .osm.pbf, .geojson). What lies
      beside the courses is kept with the plan. It is read here and sent nowhere.
      <input
        type="file"
        accept=".osm,.gz,.pbf,.geojson"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = '';
          if (file !== undefined) void takeStreets(store, file);
        }}
      />
    </label>
  );
}

function Choices({ close }: { readonly close: () => void }): JSX.Element {
  const store = useStore();
  const now = store.background.value;
  const shown = 'address' in now ? 'address' : now.kind;
  const [kind, setKind] = useState<Background['kind'] | 'address'>(shown);
  const choose = (next: Background['kind'] | 'address'): void => {
    setKind(next);
    if (next === 'plan' || next === 'paper') chooseBackground(store, { kind: next });
  };
  const takeFile = (chosen: File | undefined): void => {
    if (chosen !== undefined) chooseBackground(store, { kind: 'tiles', file: chosen });
  };
  return (
    <div
      class="background-panel"
      id="background"
      role="group"
      aria-label="Background"
      onKeyDown={(event) => event.key === 'Escape' && close()}
    >
      {KINDS.map(([value, label]) => (
        <label key={value} class="choice">
          <input type="radio" name="background" checked={kind === value} onChange={() => choose(value)} />
          {label}
        </label>
      ))}
      {kind === 'plan' && store.open.value !== null ? <StreetsChoice /> : null}
      {kind === 'address' ? <AddressForm now={now} /> : null}
      {kind === 'tiles' ? (
        <label class="stack">
          {now.kind === 'tiles'
            ? `Showing ${now.file.name}. Choose another file:`
            : 'Choose a file, or drop it on the page. It is read here and sent nowhere.'}
          <input type="file" accept=".pmtiles" onChange={(event) => takeFile(event.currentTarget.files?.[0])} />
        </label>
      ) : null}
      <button type="button" onClick={close}>
        Close
      </button>
    </div>
  );
}

export function BackgroundTools(): JSX.Element {
  const { inside, button, shown, toggle, close } = useUnfolded();
  return (
    <div ref={inside} class="background-tools">
      <button ref={button} type="button" aria-expanded={shown} aria-controls="background" onClick={toggle}>
        Background
      </button>
      {shown ? <Choices close={close} /> : null}
    </div>
  );
}
