export { Columns, type Fact, Page, Part } from "./Page";
export { LinesSkeleton, PageSkeleton } from "./Skeleton";
