import { MantineProvider } from "@mantine/core";
import { type QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { type ComponentProps, Suspense } from "react";
import { RouterProvider } from "react-router/dom";
import { theme, variables } from "./theme";

interface AppProps {
  cache: QueryClient;
  router: ComponentProps<typeof RouterProvider>["router"];
}

/** Everything that a page stands in: the look, the cache of what the server said, the addresses. */
export function App({ cache, router }: AppProps) {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={variables} defaultColorScheme="auto">
      <QueryClientProvider client={cache}>
        <Suspense fallback={null}>
          <RouterProvider router={router} />
        </Suspense>
      </QueryClientProvider>
    </MantineProvider>
  );
}
