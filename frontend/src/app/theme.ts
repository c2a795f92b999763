import { type CSSVariablesResolver, createTheme, type MantineColorsTuple } from "@mantine/core";
import { dark, light, type Palette } from "./palette";

const kelp: MantineColorsTuple = [
  "#e9f3ed",
  "#d3e6db",
  "#afd6c0",
  "#8acaa8",
  "#64ad88",
  "#448f6a",
  "#2f7557",
  "#276349",
  "#1d513d",
  "#153e2e",
];
const brick: MantineColorsTuple = [
  "#fbeeea",
  "#f5d7cf",
  "#f2b3a4",
  "#f0937f",
  "#db6e57",
  "#c45440",
  "#a83e2c",
  "#9f3625",
  "#962f1f",
  "#7b2418",
];
const amber: MantineColorsTuple = [
  "#fdf4e2",
  "#f8e5bf",
  "#f1ce8b",
  "#e7b45a",
  "#dc9a2e",
  "#bd7f1b",
  "#9a6409",
  "#875600",
  "#754a00",
  "#5c3a00",
];

export const theme = createTheme({
  fontFamily: '"Atkinson Hyperlegible Next Variable", system-ui, sans-serif',
  fontFamilyMonospace: '"Atkinson Hyperlegible Next Variable", ui-monospace, monospace',
  headings: { fontWeight: "650" },
  fontSizes: { xs: "0.82rem", sm: "0.92rem", md: "1rem", lg: "1.12rem", xl: "1.3rem" },
  colors: { kelp, brick, amber },
  primaryColor: "kelp",
  primaryShade: { light: 8, dark: 6 },
  defaultRadius: 2,
  cursorType: "pointer",
  respectReducedMotion: true,
  focusRing: "auto",
  components: {
    Button: { defaultProps: { size: "md", h: 48 } },
    ActionIcon: { defaultProps: { size: 48, variant: "subtle" } },
    Input: { defaultProps: { size: "md" }, vars: () => ({ wrapper: { "--input-height": "48px" } }) },
    InputWrapper: {
      classNames: { root: "cell" },
      defaultProps: { inputWrapperOrder: ["label", "input", "description", "error"] },
    },
    Checkbox: {
      defaultProps: { size: "md", radius: 2 },
      vars: () => ({ root: { "--checkbox-size": "26px" } }),
    },
    Switch: { defaultProps: { size: "md" } },
    Menu: { defaultProps: { shadow: "none", radius: 2 } },
    Drawer: { defaultProps: { shadow: "none" } },
    Select: {
      // The list itself scrolls, as a listbox may; a scrolling box around it could not be reached by keyboard.
      defaultProps: { comboboxProps: { shadow: "none" }, allowDeselect: false, withScrollArea: false },
      styles: { options: { maxHeight: 300, overflowY: "auto" } },
    },
  },
});

function named(palette: Palette): Record<string, string> {
  const own = Object.entries(palette).map(([name, colour]) => [
    `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
    colour,
  ]);
  return {
    ...Object.fromEntries(own),
    "--mantine-color-body": palette.sheet,
    "--mantine-color-text": palette.ink,
    "--mantine-color-dimmed": palette.inkSoft,
    "--mantine-color-placeholder": palette.inkSoft,
    "--mantine-color-anchor": palette.kelp,
    "--mantine-color-error": palette.brick,
    "--mantine-color-default": palette.sheet,
    "--mantine-color-default-hover": palette.raised,
    "--mantine-color-default-color": palette.ink,
    "--mantine-color-default-border": palette.ruleStrong,
    "--mantine-color-kelp-filled": palette.kelpFill,
    "--mantine-color-kelp-filled-hover": palette.kelpFillHover,
    "--mantine-color-brick-filled": palette.brickFill,
    "--mantine-primary-color-filled": palette.kelpFill,
    "--mantine-primary-color-filled-hover": palette.kelpFillHover,
  };
}

export const variables: CSSVariablesResolver = () => ({
  variables: {},
  light: named(light),
  dark: named(dark),
});
