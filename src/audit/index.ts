export { auditPlan } from "./audit-plan.ts";
export { auditPlanSewing } from "./sew/index.ts";
