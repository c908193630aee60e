// @ts-expect-error the module itself, past its package's door, has no types
import * as highs from "../../node_modules/highs/build/highs.mjs";

/*
 * Stands in for the solver's package when the page is bundled: the same module, with its WebAssembly handed in
 * instead of fetched, since a file opened by double click may fetch nothing.
 */
type Load = (options: object) => Promise<unknown>;
type Receive = (instance: WebAssembly.Instance, module: WebAssembly.Module) => void;

const load = (highs as { default: Load }).default;
let compiled: WebAssembly.Module | null = null;

/** Gives the compiled module; it has to come before the first search. */
export function useSolver(module: WebAssembly.Module): void {
  compiled = module;
}

export default (options: object): Promise<unknown> => {
  const module = compiled;
  if (module === null) return Promise.reject(new Error("the solver has not been handed in"));
  return load({
    ...options,
    instantiateWasm(imports: WebAssembly.Imports, receive: Receive) {
      void WebAssembly.instantiate(module, imports).then((instance) => receive(instance, module));
      return {};
    },
  });
};
