import { Checkbox, Select, TextInput } from "@mantine/core";
import { useState } from "react";
import { Link } from "react-router";
import { useIsOwner, useSession } from "@/api/session";
import { BigButton, OneOf, Sheet, useSheet } from "@/components/form";
import { StatusMark } from "@/components/notes/StatusMark";
import { Page } from "@/components/page";
import { chosenFirst, currencies, roleLabel, timeZones } from "./choices";
import { useChangeShop, useShop } from "./queries";
import classes from "./shop.module.css";

const FACES = [
  ["top", "Tops count", "The flat of the top."],
  ["edges", "Edges count", "Front and end edges that get a coat."],
  ["splash", "Splash counts", "Backsplash strips."],
  ["deducts_cutouts", "Cut-outs are taken off", "Off: the resin over a sink hole was poured all the same."],
] as const;

/** What the shop is called, how it counts and measures. */
export function ShopPage() {
  const shop = useShop();
  const isOwner = useIsOwner();
  const role = useSession().person?.role ?? "viewer";
  const [isSaved, setSaved] = useState(false);
  const sheet = useSheet({
    act: useChangeShop(() => setSaved(true)),
    initial: shop,
    toBody: (typed) => typed,
    draft: "shop",
    check: ({ name }) => ({ ...(name.trim() === "" && { name: "Give the shop a name." }) }),
  });
  const { form } = sheet;
  return (
    <Page
      title="The shop"
      facts={[
        { label: "Your role", value: roleLabel(role) },
        {
          label: "Who may do what",
          value: isOwner ? <Link to="/shop/people">People and roles</Link> : "An owner decides",
        },
      ]}
    >
      <Sheet
        sheet={sheet}
        acts={
          isOwner && (
            <>
              <BigButton busy={sheet.isPending}>Save the settings</BigButton>
              <span role="status" className={classes.saved}>
                {isSaved && !form.isDirty() && <StatusMark mark="ok">Saved</StatusMark>}
              </span>
            </>
          )
        }
      >
        <fieldset className={classes.fields} disabled={!isOwner}>
          <div className={`cells ${classes.shop}`}>
            <TextInput label="Name" {...form.getInputProps("name")} />
            <TextInput label="Town" {...form.getInputProps("town")} />
            <Select
              label="Time zone"
              description="Decides which day a pour belongs to from now on; nothing posted moves."
              data={chosenFirst(timeZones(), form.values.time_zone)}
              limit={60}
              searchable
              {...form.getInputProps("time_zone")}
            />
            <Select
              label="Currency"
              description="The sign beside money; nothing is converted."
              data={chosenFirst(currencies(), form.values.currency)}
              limit={60}
              searchable
              {...form.getInputProps("currency")}
            />
            <TextInput
              label="Poison help"
              description="Shown with every caution: your country's number."
              inputMode="tel"
              {...form.getInputProps("poison_help")}
            />
          </div>
          <div className={classes.choices}>
            <OneOf
              label="Liquids in"
              choices={[
                ["fl_oz", "fl oz"],
                ["ml", "mL"],
              ]}
              {...form.getInputProps("units.volume")}
            />
            <OneOf
              label="Powders in"
              choices={[
                ["oz", "oz (weight)"],
                ["g", "g"],
              ]}
              {...form.getInputProps("units.mass")}
            />
            <OneOf
              label="Tops in"
              choices={[
                ["sqft", "sq ft"],
                ["sqm", "m²"],
              ]}
              {...form.getInputProps("units.area")}
            />
            <OneOf
              label="Warmth in"
              choices={[
                ["F", "°F"],
                ["C", "°C"],
              ]}
              {...form.getInputProps("units.temperature")}
            />
          </div>
          <fieldset className={classes.faces}>
            <legend>What counts as area, for jobs from now on</legend>
            {FACES.map(([face, label, says]) => (
              <Checkbox
                key={face}
                label={label}
                description={says}
                {...form.getInputProps(`counts_faces.${face}`, { type: "checkbox" })}
              />
            ))}
          </fieldset>
        </fieldset>
      </Sheet>
    </Page>
  );
}
