package evenrise.model.review;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Load;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Needs;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What holds in an emergency though processing that it needs drops: it is left on without. */
final class EmergencyNeedsCheck implements ElectricalCheck {
    private static final String ID = "emergency-needs";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Needs needs = new Needs(layout.project());
        List<Load> left = new ArrayList<>();
        Set<Load> dropped = new LinkedHashSet<>();
        long silent = 0;
        for (Load load : layout.project().loads()) {
            List<Load> missing = layout.index().drops(load)
                    ? List.of()
                    : needs.of(load).stream().filter(layout.index()::drops).toList();
            if (!missing.isEmpty()) {
                left.add(load);
                dropped.addAll(missing);
                silent += load.needsGroups().isEmpty() ? 1 : 0;
            }
        }
        if (left.isEmpty()) {
            return;
        }
        String text = Phrase.counted(left.size(), "load") + " (" + Remarks.namedLoads(left) + ")"
                + (left.size() == 1 ? " holds" : " hold") + " in an emergency that drops processing which "
                + (left.size() == 1 ? "it needs (" : "they need (") + Remarks.namedLoads(List.copyOf(dropped)) + ")"
                + (silent == 0
                        ? ""
                        : "; " + silent + " of them " + (silent == 1 ? "states" : "state")
                                + " no needs_groups, so that all processing counts as needed");
        findings.add(Remark.builder()
                .check(ID)
                .kind("left-without-processing")
                .grade(Grade.NOTE)
                .place(left.size() == 1 ? left.get(0).id() : Remarks.PLANT)
                .subjects(Subjects.loads(left.stream().map(Load::id).toList()))
                .message(text)
                .cure("let them drop, too, or state needs_groups")
                .build());
    }
}
