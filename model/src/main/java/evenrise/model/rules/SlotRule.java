package evenrise.model.rules;

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
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
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

    private static String unfit(Placement placement, Layout layout) {
        String load = "load " + Say.quoted(placement.id());
        if (placement.panel().isEmpty()) {
            return load + " is in panel " + Say.panelOf(placement)
                    + ", which the project does not have. Maybe move it to one of the project's panels.";
        }
        int poles = placement.load().poles();
        int phases = layout.distribution()
                .of(placement.panel().get())
                .system()
                .phases()
                .size();
        if (poles > phases) {
            return load + " has " + poles + " poles, but panel " + Say.panelOf(placement) + " has "
                    + (phases == 1 ? "1 phase" : phases + " phases")
                    + ". Maybe move it to a panel below another transformer.";
        }
        return load + " (" + poles + (poles == 1 ? " pole" : " poles") + ") does not fit at slot "
                + placement.assignment().slot() + " of panel " + Say.panelOf(placement) + ", whose slots are 1 to "
                + placement.panel().get().slots() + ". Maybe move it to a lower slot or to another panel.";
    }

    private static void overlaps(Placement placement, Map<Integer, String> taken, List<String> broken) {
        for (int slot : placement.slots()) {
            String holder = taken.put(slot, placement.id());
            if (holder != null) {
                broken.add("load " + Say.quoted(placement.id()) + " takes slot " + slot + " of panel "
                        + Say.panelOf(placement) + ", which is "
                        + (holder.equals(RESERVED) ? "reserved" : "taken by load " + Say.quoted(holder))
                        + "; one breaker a slot is allowed. Maybe move it to a free slot.");
            }
        }
    }

    private static void poles(Placement placement, List<String> broken) {
        int poles = placement.load().poles();
        if (placement.phases().stream().distinct().count() != poles) {
            broken.add("load " + Say.quoted(placement.id()) + " has " + poles + " poles, but slots "
                    + Say.listed(placement.slots()) + " of panel " + Say.panelOf(placement) + " lie on phases "
                    + Say.listed(placement.phases()) + "; " + poles
                    + " different ones are needed. Maybe move it, or correct the panel's phase_rotation.");
        }
    }
}
