import { averaged, poorest, type Fix } from './walk';

/** How long positions are gathered for one corner, in milliseconds, and how many are enough. */
const patience = 5000;
const enough = 8;
/** An older position says nothing about where the phone is now. */
const fresh = 10000;

/** Follows the phone's position. Single failures are normal out of doors and end nothing. */
export class Walker {
  state: 'off' | 'waiting' | 'good' | 'lost' | 'denied' | 'none' = $state('off');
  latest: Fix | null = $state.raw(null);
  /** Positions taken for the corner that is being marked. */
  gathered: Fix[] | null = $state.raw(null);
  /** The last try to mark had no position good enough. */
  tooPoor = $state(false);
  #watch: number | undefined;
  #time = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #done: ((fix: Fix | undefined) => void) | undefined;

  get walking(): boolean {
    return this.state === 'waiting' || this.state === 'good' || this.state === 'lost';
  }

  start(): void {
    if (!('geolocation' in navigator)) {
      this.state = 'none';
      return;
    }
    this.state = 'waiting';
    this.#watch = navigator.geolocation.watchPosition(
      (p) => {
        this.#take({
          latitude: p.coords.latitude,
          longitude: p.coords.longitude,
          accuracy: p.coords.accuracy,
        });
      },
      (error) => {
        this.#fail(error.code);
      },
      { enableHighAccuracy: true, maximumAge: 0, timeout: 20000 },
    );
  }

  stop(): void {
    if (this.#watch !== undefined) navigator.geolocation.clearWatch(this.#watch);
    this.#watch = undefined;
    this.#finish(undefined);
    if (this.walking) this.state = 'off';
    this.latest = null;
  }

  /** Gathers positions for a corner; undefined when none was good enough, or the walk ended. */
  mark(): Promise<Fix | undefined> {
    const now = this.latest && Date.now() - this.#time < fresh ? [this.latest] : [];
    this.gathered = now;
    this.tooPoor = false;
    return new Promise((resolve) => {
      this.#done = resolve;
      this.#timer = setTimeout(() => {
        this.#finish(averaged(this.gathered ?? []));
      }, patience);
    });
  }

  #take(fix: Fix): void {
    this.latest = fix;
    this.#time = Date.now();
    this.state = 'good';
    if (this.gathered === null || fix.accuracy > poorest) return;
    this.gathered = [...this.gathered, fix];
    if (this.gathered.length >= enough) this.#finish(averaged(this.gathered));
  }

  #fail(code: number): void {
    // 1: not allowed. 2 and 3: no position just now, or none in time; the watch goes on.
    if (code === 1) {
      this.stop();
      this.state = 'denied';
    } else this.state = 'lost';
  }

  #finish(fix: Fix | undefined): void {
    clearTimeout(this.#timer);
    const done = this.#done;
    this.#done = undefined;
    this.gathered = null;
    if (!done) return;
    this.tooPoor = fix === undefined;
    done(fix);
  }
}
