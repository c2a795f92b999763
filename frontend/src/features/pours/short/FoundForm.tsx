import { Button } from "@mantine/core";
import { useState } from "react";
import { useMaterials } from "@/api/records";
import { AmountField, type Said, unsaid } from "@/components/entry/AmountField";
import { PickOne } from "@/components/entry/PickOne";
import { WhyField } from "@/components/entry/WhyField";
import { EmptyState } from "@/components/notes/EmptyState";
import { useInWords, useLotChoices } from "../lines/lotChoices";
import type { Shortage } from "../lines/short";
import { useLotsOf } from "../queries";
import type { Found } from "./found";
import classes from "./short.module.css";

interface FoundFormProps {
  shortages: readonly Shortage[];
  place: number;
  onDone: (found: Found) => void;
}

/** There was more of a lot than the book said: of which, how much more, and why. It is booked together with the pour. */
export function FoundForm({ shortages, place, onDone }: FoundFormProps) {
  const materials = useMaterials();
  const inWords = useInWords();
  const [at, setAt] = useState(0);
  const shortage = shortages[at];
  const material = materials.find(({ id }) => id === shortage?.material);
  const { choices } = useLotChoices(useLotsOf(shortage?.material ?? 0), place);
  const [lot, setLot] = useState("");
  const [quantity, setQuantity] = useState<Said | null>(null);
  const [reason, setReason] = useState("");
  const [isTried, setTried] = useState(false);
  if (!shortage || !material) return <EmptyState title="Nothing is short" />;
  const missing = shortage.missing;
  const said = quantity ?? { text: inWords(missing), body: missing };
  const here = choices.filter(({ value }) => value.endsWith(`@${place}`));
  const chosen = lot || (here.length === 1 ? (here[0]?.value ?? "") : "");

  function done() {
    setTried(true);
    if (chosen === "" || !said.body || reason.trim() === "") return;
    const label = here.find(({ value }) => value === chosen)?.label ?? "";
    onDone({
      lot: Number(chosen.split("@")[0]),
      name: `${label}, ${material?.name ?? ""}`,
      quantity: said,
      reason,
    });
  }

  return (
    <div className={classes.form}>
      {shortages.length > 1 && (
        <PickOne
          label="Of what"
          choices={shortages.map(({ name }, i) => ({ value: String(i), label: name }))}
          value={String(at)}
          onChange={(next) => {
            setAt(Number(next));
            setLot("");
            setQuantity(null);
          }}
        />
      )}
      <PickOne
        label="Of which lot"
        choices={here}
        value={chosen}
        onChange={setLot}
        error={isTried && chosen === "" ? "Say which container it was." : undefined}
        description={
          here.length === 0 ? "No lot of it lies here by the book: book the delivery instead." : undefined
        }
      />
      <AmountField
        label="How much more than the book said"
        material={material}
        value={said}
        onChange={setQuantity}
        error={isTried ? unsaid(said) : undefined}
      />
      <WhyField
        value={reason}
        onChange={setReason}
        error={isTried && reason.trim() === "" ? "Say why the book was short." : undefined}
        usual={["The container was fuller than its label", "An earlier pour took less than was logged"]}
      />
      <Button h={58} fz="1.06rem" onClick={done}>
        Count it up with the pour
      </Button>
    </div>
  );
}
