import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "@mantine/core/styles.css";
import "./app/look.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { createCache } from "@/api/query";
import { App } from "./app/App";
import { createRouter } from "./app/router";

const root = document.getElementById("root");
if (root) {
  createRoot(root).render(
    <StrictMode>
      <App cache={createCache()} router={createRouter()} />
    </StrictMode>,
  );
}
