package evenrise.model.rules;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Panel;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A breaker fits its panel, overlaps nothing and no reserved slot, and its poles touch different phases. */
final class SlotRule implements Rule {
    @Override
    public String id() {
        return "slot";
    }

    private static final String RESERVED = "";

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        Map<String, Map<Integer, String>> taken = new HashMap<>();
        for (Panel panel : layout.project().panels()) {
            Map<Integer, String> slots = taken.computeIfAbsent(panel.id(), any -> new HashMap<>());
            panel.reservedSlots().forEach(slot -> slots.put(slot, RESERVED));
        }
        for (Placement placement : layout.placements()) {
            if (placement.fits()) {
                overlaps(placement, taken.get(placement.assignment().panel()), broken);
                poles(placement, broken);
            } else {
                broken.add(unfit(placement, layout));
            }
        }
        return broken;
    }

    private static BrokenRule unfit(Placement placement, Layout layout) {
        if (placement.panel().isEmpty()) {
            return about(BrokenKind.NO_SUCH_PANEL, placement).build();
        }
        int poles = placement.load().poles();
        int phases = layout.distribution()
                .of(placement.panel().get())
                .system()
                .phases()
                .size();
        if (poles > phases) {
            return about(BrokenKind.TOO_MANY_POLES, placement)
                    .word("phases", Phrase.counted(phases, "phase"))
                    .figure(poles, phases, "")
                    .build();
        }
        return about(BrokenKind.DOES_NOT_FIT, placement)
                .word("poles", Phrase.counted(poles, "pole"))
                .word("slot", placement.assignment().slot())
                .word("slots", placement.panel().get().slots())
                .build();
    }

    private static Broken about(BrokenKind kind, Placement placement) {
        return Broken.by(kind)
                .load(placement.id())
                .panel(placement.assignment().panel())
                .at(RuleWords.seatOf(placement));
    }

    private static void overlaps(Placement placement, Map<Integer, String> taken, List<BrokenRule> broken) {
        for (int slot : placement.slots()) {
            String holder = taken.put(slot, placement.id());
            if (holder != null) {
                BrokenKind kind = holder.equals(RESERVED) ? BrokenKind.RESERVED_SLOT : BrokenKind.TAKEN_SLOT;
                Broken overlap = about(kind, placement).word("slot", slot);
                if (kind == BrokenKind.TAKEN_SLOT) {
                    overlap.other(holder);
                }
                broken.add(overlap.at("panel " + placement.assignment().panel() + " slot " + slot)
                        .build());
            }
        }
    }

    private static void poles(Placement placement, List<BrokenRule> broken) {
        int poles = placement.load().poles();
        long touched = placement.phases().stream().distinct().count();
        if (touched != poles) {
            broken.add(about(BrokenKind.POLES_ON_ONE_PHASE, placement)
                    .word("slots", RuleWords.listed(placement.slots()))
                    .word("phases", RuleWords.listed(placement.phases()))
                    .figure(touched, poles, "")
                    .build());
        }
    }
}
