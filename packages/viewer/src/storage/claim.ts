/**
 * One tab at a time writes a plan (Web Locks API, W3C). A claim that another tab holds waits; it can be taken
 * over, of which the other is told. Where the browser has no locks, every claim is granted: each write compares revisions anyway.
 */
export interface Claiming {
  /** This tab has the plan: at once, or when the other tab has let it go. `late`: another tab had it before. */
  readonly granted: (late: boolean) => void;
  /** Another tab has it. */
  readonly held: () => void;
  /** Another tab has taken it over. */
  readonly lost: () => void;
}

export interface Claim {
  readonly takeOver: () => void;
  readonly release: () => void;
}

/** The name under which browsers lock a plan for one tab. */
export const lockName = (id: string): string => `halfcup-plan-${id}`;

const NO_LOCKS: Claim = { takeOver: () => undefined, release: () => undefined };

export function claimPlan(id: string, claiming: Claiming): Claim {
  const locks = (navigator as Partial<Navigator>).locks;
  if (locks === undefined) {
    claiming.granted(false);
    return NO_LOCKS;
  }
  const name = lockName(id);
  const end = new AbortController();
  let done = false;
  let mine = false;
  /** The browser holds the lock until this promise is settled. */
  const hold = (late: boolean): Promise<void> => {
    if (done) return Promise.resolve();
    mine = true;
    claiming.granted(late);
    return new Promise((resolve) => end.signal.addEventListener('abort', () => resolve()));
  };
  const ask = (options: LockOptions, late: boolean): Promise<void> =>
    locks
      .request(name, options, (lock) => (lock === null ? undefined : hold(late)))
      .then(
        () => undefined,
        () => {
          if (!mine || done) return;
          mine = false;
          claiming.lost();
        },
      );
  const start = async (): Promise<void> => {
    await locks
      .request(name, { ifAvailable: true }, (lock) => {
        if (lock !== null) return hold(false);
        if (!done) claiming.held();
        return undefined;
      })
      .catch(() => {
        if (done) return;
        mine = false;
        claiming.lost();
      });
    if (!done && !mine) await ask({ signal: end.signal }, true);
  };
  void start();
  return {
    takeOver: () => void ask({ steal: true }, true),
    release: () => {
      done = true;
      end.abort();
    },
  };
}
