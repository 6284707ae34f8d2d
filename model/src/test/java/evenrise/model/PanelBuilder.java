package evenrise.model;

import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotNumbering;
import java.util.List;
import java.util.function.Consumer;

public final class PanelBuilder {
    private final evenrise.model.project.PanelBuilder made;

    PanelBuilder(String id) {
        made = Panel.builder().id(id).slots(42).ratedAmps(225).neutralFactor(1).numbering(SlotNumbering.ALTERNATING);
    }

    public PanelBuilder slots(int it) {
        made.slots(it);
        return this;
    }

    public PanelBuilder ratedAmps(double it) {
        made.ratedAmps(it);
        return this;
    }

    public PanelBuilder neutralFactor(double it) {
        made.neutralFactor(it);
        return this;
    }

    public PanelBuilder inrushLimitAmps(double it) {
        made.inrushLimitAmps(it);
        return this;
    }

    public PanelBuilder numbering(SlotNumbering it) {
        made.numbering(it);
        return this;
    }

    public PanelBuilder sequential() {
        return numbering(SlotNumbering.SEQUENTIAL);
    }

    public PanelBuilder phaseRotation(List<Phase> it) {
        made.phaseRotation(it);
        return this;
    }

    public PanelBuilder phaseRotation(Phase... it) {
        return phaseRotation(List.of(it));
    }

    public PanelBuilder reservedSlots(List<Integer> it) {
        made.reservedSlots(it);
        return this;
    }

    public PanelBuilder reservedSlots(Integer... it) {
        return reservedSlots(List.of(it));
    }

    public PanelBuilder switchedSlots(List<Integer> it) {
        made.switchedSlots(it);
        return this;
    }

    public PanelBuilder switchedSlots(Integer... it) {
        return switchedSlots(List.of(it));
    }

    public PanelBuilder feeder(Feeder it) {
        made.feeder(it);
        return this;
    }

    public PanelBuilder interruptingAmps(double it) {
        made.interruptingAmps(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public PanelBuilder with(Consumer<evenrise.model.project.PanelBuilder> more) {
        more.accept(made);
        return this;
    }

    public Panel build() {
        return made.build();
    }
}
