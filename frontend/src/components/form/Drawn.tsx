import { Drawer } from "@mantine/core";
import { useMediaQuery } from "@mantine/hooks";
import type { ReactNode } from "react";

interface DrawnProps {
  title: string;
  isOpen: boolean;
  onClose: () => void;
  children: ReactNode;
}

const UPWARD = {
  width: "100%",
  height: "auto",
  maxHeight: "92dvh",
  flex: "none",
  borderTop: "2px solid var(--frame)",
};

/** A short form drawn over the page: up from the lower edge on a phone, in from the right on a laptop. */
export function Drawn({ title, isOpen, onClose, children }: DrawnProps) {
  const isWide = useMediaQuery("(min-width: 48em)");
  return (
    <Drawer
      opened={isOpen}
      onClose={onClose}
      title={title}
      position={isWide ? "right" : "bottom"}
      size={isWide ? 480 : "auto"}
      overlayProps={{ backgroundOpacity: 0.45 }}
      closeButtonProps={{ "aria-label": "Close", size: 48 }}
      attributes={{ header: { role: "none" } }}
      styles={{
        title: { fontSize: "1.18rem", fontWeight: 650 },
        content: { "--nav-room": "0px", ...(isWide ? {} : UPWARD) } as React.CSSProperties,
      }}
    >
      {children}
    </Drawer>
  );
}
