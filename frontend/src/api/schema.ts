/** The shapes of the calls that the front end makes. */
export type Role = "owner" | "crew" | "viewer";

export interface Person {
  id: number;
  username: string;
  name: string;
  role: Role;
  is_active: boolean;
}

export interface Units {
  volume: "fl_oz" | "ml";
  mass: "oz" | "g";
  area: "sqft" | "sqm";
  temperature: "F" | "C";
}

export interface CountsFaces {
  top: boolean;
  edges: boolean;
  splash: boolean;
  deducts_cutouts: boolean;
}

export interface Shop {
  name: string;
  currency: string;
  time_zone: string;
  units: Units;
  counts_faces: CountsFaces;
  poison_help: string;
}

export interface Session {
  person: Omit<Person, "is_active"> | null;
  shop: Shop | null;
  needs_set_up: boolean;
}

export interface SetUp {
  shop_name: string;
  time_zone: string;
  currency: string;
  username: string;
  password: string;
  name: string;
}

export interface PersonIn {
  username: string;
  name: string;
  role: Role;
  password?: string;
  is_active?: boolean;
}

interface Page<T> {
  count: number;
  next: string | null;
  previous: string | null;
  results: T[];
}

interface Json<T> {
  content: { "application/json": T };
}

interface Read<Out> {
  parameters: { path?: never; query?: never };
  requestBody?: never;
  responses: { 200: Json<Out> };
}

interface Write<Out, In, Path = undefined> {
  parameters: Path extends undefined ? { path?: never } : { path: Path };
  requestBody: Json<In>;
  responses: { 200: Json<Out> };
}

export interface paths {
  "/api/session/": {
    get: Read<Session>;
    post: Write<Session, { username: string; password: string }>;
    delete: { parameters: { path?: never }; requestBody?: never; responses: { 204: { content?: never } } };
  };
  "/api/set-up/": { post: Write<Session, SetUp> };
  "/api/shop/": { get: Read<Shop>; patch: Write<Shop, Partial<Shop>> };
  "/api/people/": { get: Read<Page<Person>>; post: Write<Person, PersonIn> };
  "/api/people/{id}/": { patch: Write<Person, Partial<PersonIn>, { id: number }> };
}
