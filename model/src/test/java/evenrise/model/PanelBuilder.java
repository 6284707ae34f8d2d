package evenrise.model;

import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotNumbering;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

public final class PanelBuilder {
    private final String id;
    private int slots = 42;
    private double ratedAmps = 225;
    private double neutralFactor = 1;
    private OptionalDouble inrushLimitAmps = OptionalDouble.empty();
    private SlotNumbering numbering = SlotNumbering.ALTERNATING;
    private List<Phase> phaseRotation = List.of();
    private List<Integer> reservedSlots = List.of();
    private Optional<List<Integer>> switchedSlots = Optional.empty();

    private Optional<Feeder> feeder = Optional.empty();
    private OptionalDouble interruptingAmps = OptionalDouble.empty();

    PanelBuilder(String id) {
        this.id = id;
    }

    public PanelBuilder slots(int it) {
        slots = it;
        return this;
    }

    public PanelBuilder ratedAmps(double it) {
        ratedAmps = it;
        return this;
    }

    public PanelBuilder neutralFactor(double it) {
        neutralFactor = it;
        return this;
    }

    public PanelBuilder inrushLimitAmps(double it) {
        inrushLimitAmps = OptionalDouble.of(it);
        return this;
    }

    public PanelBuilder numbering(SlotNumbering it) {
        numbering = it;
        return this;
    }

    public PanelBuilder sequential() {
        return numbering(SlotNumbering.SEQUENTIAL);
    }

    public PanelBuilder phaseRotation(List<Phase> it) {
        phaseRotation = it;
        return this;
    }

    public PanelBuilder phaseRotation(Phase... it) {
        return phaseRotation(List.of(it));
    }

    public PanelBuilder reservedSlots(List<Integer> it) {
        reservedSlots = it;
        return this;
    }

    public PanelBuilder reservedSlots(Integer... it) {
        return reservedSlots(List.of(it));
    }

    public PanelBuilder switchedSlots(List<Integer> it) {
        switchedSlots = Optional.of(it);
        return this;
    }

    public PanelBuilder switchedSlots(Integer... it) {
        return switchedSlots(List.of(it));
    }

    public PanelBuilder feeder(Feeder it) {
        feeder = Optional.of(it);
        return this;
    }

    public PanelBuilder interruptingAmps(double it) {
        interruptingAmps = OptionalDouble.of(it);
        return this;
    }

    public Panel build() {
        return new Panel(
                id,
                slots,
                ratedAmps,
                neutralFactor,
                inrushLimitAmps,
                numbering,
                phaseRotation,
                reservedSlots,
                switchedSlots,
                feeder,
                interruptingAmps);
    }
}
