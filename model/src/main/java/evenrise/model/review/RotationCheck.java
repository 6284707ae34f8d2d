package evenrise.model.review;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Rotation;
import java.util.List;
import java.util.stream.Collectors;

/** Whether three-phase motors turn the way they should, by the order in which their poles touch the phases. */
final class RotationCheck implements ElectricalCheck {
    private static final String ID = "rotation";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        layout.placements().stream()
                .filter(each -> each.fits() && Rotation.matters(each.load()))
                .forEach(each -> findings.made(ID, each.id()));
        layout.placements().stream()
                .filter(each -> each.fits() && Rotation.isReversed(each))
                .forEach(each -> findings.add(remark(
                        each,
                        Rotation.isReversed(each.load(), each.phases())
                                ? each.phases()
                                : each.assignment().phases(),
                        Rotation.isStated(each.load())
                                ? "the order that it states"
                                : "A B C, which counts as forward where the project states no rotation")));
    }

    /** Motors that state nothing and turned the other way in an earlier plan, which may be the one that is built. */
    static void against(Plan earlier, Layout layout, Remarks findings) {
        Layout as = Layout.of(Rotation.asBuilt(layout.project(), earlier), layout.plan());
        for (Placement each : as.placements()) {
            boolean isTold =
                    layout.placement(each.id()).filter(Rotation::isReversed).isPresent();
            if (each.fits() && !isTold && Rotation.isReversed(each)) {
                findings.add(remark(each, each.phases(), "its order in the earlier plan"));
            }
        }
    }

    private static Remark remark(Placement each, List<Phase> landed, String reference) {
        return Remark.builder()
                .check(ID)
                .kind("turns-backwards")
                .grade(Grade.BREAKS)
                .place(each.id())
                .clause("IEC 60204-1 and NFPA 79, clauses on the direction of rotation (from memory)")
                .message("motor " + Phrase.quoted(each.id()) + " in panel "
                        + Phrase.quoted(each.assignment().panel()) + " has its poles on " + text(landed)
                        + ", the reverse of " + reference + ": it turns backwards")
                .cure("take a panel or slots of the"
                        + " other order, or exchange two of its conductors and state equipment.motor.rotation; check"
                        + " the rotation before coupling")
                .build();
    }

    private static String text(List<Phase> phases) {
        return phases.stream().map(Phase::name).collect(Collectors.joining(" "));
    }
}
