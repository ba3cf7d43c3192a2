// The whole estimate; loaded only when somebody asks for it.
export { estimateJob, NoEstimate } from "../lib/estimate/estimate-job.js";
