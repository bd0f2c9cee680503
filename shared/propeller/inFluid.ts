import type { FluidProperties } from "../model/fluid.ts";

/** A request that names its fluid, with the properties of that fluid in place of the name. */
export type InFluid<Request> = Omit<Request, "fluid"> & { readonly fluid: FluidProperties };
