/** The device's own position while it is asked for, with the screen kept awake where the browser lets it. */
import { useEffect, useState } from 'preact/hooks';
import type { Fix } from '../../state/view/road.ts';

export interface Watching {
  readonly fix: Fix | null;
  /** Why there is none, and what to do. */
  readonly trouble: string | null;
}

const REASON: Readonly<Record<number, string>> = {
  1: 'This page may not use this device’s position. Allow it in the browser’s settings, then start again.',
  2: 'This device does not know where it is. Step into the open, or measure by wheel from the chalk mark.',
  3: 'No position yet; still trying. Step into the open.',
};

export function useFix(on: boolean): Watching {
  const [watching, setWatching] = useState<Watching>({ fix: null, trouble: null });
  useEffect(() => {
    if (!on) return undefined;
    if (!('geolocation' in navigator)) {
      setWatching({ fix: null, trouble: 'This browser gives no position. Measure by wheel from the chalk mark.' });
      return undefined;
    }
    const id = navigator.geolocation.watchPosition(
      ({ coords, timestamp }) =>
        setWatching({
          fix: { at: [coords.longitude, coords.latitude], accuracy: coords.accuracy, time: timestamp },
          trouble: null,
        }),
      ({ code }) => setWatching(({ fix }) => ({ fix, trouble: REASON[code] ?? REASON[2]! })),
      { enableHighAccuracy: true, maximumAge: 1000, timeout: 30_000 },
    );
    let lock: WakeLockSentinel | null = null;
    let over = false;
    const wake = async (): Promise<void> => {
      try {
        lock = await navigator.wakeLock.request('screen');
        if (over) await lock.release();
      } catch {
        // The screen may sleep then: nothing is lost, since each point is kept as it is recorded.
      }
    };
    if ('wakeLock' in navigator) void wake();
    return () => {
      over = true;
      navigator.geolocation.clearWatch(id);
      void lock?.release();
    };
  }, [on]);
  return watching;
}
