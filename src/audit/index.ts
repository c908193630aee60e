export { auditPlan } from "./audit-plan.ts";
