import { Button } from "@mantine/core";
import type { ReactNode } from "react";

interface BigButtonProps {
  children: ReactNode;
  /** The work is under way: it cannot be pressed twice. */
  busy?: boolean;
  /** "go" for the one act of a page, "plain" beside it, "stop" for what takes something away. */
  tone?: "go" | "plain" | "stop";
  type?: "submit" | "button";
  disabled?: boolean;
  onClick?: () => void;
}

/** The act of a page: high, wide on a phone, within reach of a thumb. */
export function BigButton({
  children,
  busy = false,
  tone = "go",
  type = "submit",
  disabled,
  onClick,
}: BigButtonProps) {
  return (
    <Button
      type={type}
      h={58}
      px={{ base: 18, sm: 28 }}
      fz="1.06rem"
      fw={600}
      variant={tone === "go" ? "filled" : "default"}
      {...(tone === "stop" ? { c: "var(--brick)", bd: "1.5px solid var(--brick)" } : {})}
      loading={busy}
      disabled={disabled ?? false}
      {...(onClick ? { onClick } : {})}
    >
      {children}
    </Button>
  );
}
