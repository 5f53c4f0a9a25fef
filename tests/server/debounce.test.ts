import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createDebounce } from "../../server/debounce.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test("runs once when changes have stopped", () => {
  const run = vi.fn();
  const debounce = createDebounce({ idle: 60, longest: 250 }, run);
  debounce.later();
  vi.advanceTimersByTime(50);
  debounce.later();
  vi.advanceTimersByTime(59);
  expect(run).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(run).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(1000);
  expect(run).toHaveBeenCalledTimes(1);
});

test("runs while changes go on without end", () => {
  const run = vi.fn();
  const debounce = createDebounce({ idle: 60, longest: 250 }, run);
  for (let time = 0; time < 1000; time += 50) {
    debounce.later();
    vi.advanceTimersByTime(50);
  }
  expect(run.mock.calls.length).toBeGreaterThanOrEqual(3);
  expect(run.mock.calls.length).toBeLessThanOrEqual(5);
});

test("runs at once if told so, and not at all if told so", () => {
  const run = vi.fn();
  const debounce = createDebounce({ idle: 60, longest: 250 }, run);
  debounce.later();
  debounce.soon();
  vi.advanceTimersByTime(0);
  expect(run).toHaveBeenCalledTimes(1);
  debounce.later();
  debounce.cancel();
  vi.advanceTimersByTime(1000);
  expect(run).toHaveBeenCalledTimes(1);
});
