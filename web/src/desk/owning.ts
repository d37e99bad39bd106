import { createContext } from "preact";

/** Whether an owner sits at this desk; to an assistant nothing is offered that the server would refuse. */
export const Owning = createContext(true);
