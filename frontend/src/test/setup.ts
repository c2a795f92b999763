import "@testing-library/jest-dom/vitest";
import { cleanup, configure } from "@testing-library/react";
import { afterEach, vi } from "vitest";

// The machine that tests may be busy with other work.
configure({ asyncUtilTimeout: 6000 });
vi.setConfig({ testTimeout: 20_000 });

afterEach(() => {
  cleanup();
  localStorage.clear();
  sessionStorage.clear();
});

// What the widgets ask of a browser and jsdom lacks.
vi.stubGlobal("matchMedia", (query: string) => ({
  matches: false,
  media: query,
  addEventListener: () => undefined,
  removeEventListener: () => undefined,
  addListener: () => undefined,
  removeListener: () => undefined,
}));
vi.stubGlobal(
  "ResizeObserver",
  class {
    observe() {}
    unobserve() {}
    disconnect() {}
  },
);
window.scrollTo = () => undefined;
Element.prototype.scrollIntoView = () => undefined;
Object.defineProperty(document, "fonts", {
  configurable: true,
  value: { addEventListener: () => undefined, removeEventListener: () => undefined },
});
