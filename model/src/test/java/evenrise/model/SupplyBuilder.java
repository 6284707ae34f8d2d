package evenrise.model;

import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Supply;
import evenrise.model.project.VoltageRange;
import java.util.function.Consumer;

public final class SupplyBuilder {
    private final evenrise.model.project.SupplyBuilder made;

    SupplyBuilder() {
        made = Supply.builder()
                .system(PhaseSystem.THREE_PHASE)
                .lineToNeutralVolts(120)
                .frequencyHertz(60)
                .ratedAmps(400)
                .continuousFraction(0.8)
                .neutralFactor(1);
    }

    public SupplyBuilder system(PhaseSystem it) {
        made.system(it);
        return this;
    }

    public SupplyBuilder splitPhase() {
        return system(PhaseSystem.SPLIT_PHASE);
    }

    public SupplyBuilder singlePhase() {
        return system(PhaseSystem.SINGLE_PHASE);
    }

    /** In percent of the nominal voltage. */
    public SupplyBuilder voltageRange(double least, double most) {
        made.voltageRange(new VoltageRange(least, most));
        return this;
    }

    public SupplyBuilder lineToNeutralVolts(double it) {
        made.lineToNeutralVolts(it);
        return this;
    }

    public SupplyBuilder frequencyHertz(double it) {
        made.frequencyHertz(it);
        return this;
    }

    public SupplyBuilder ratedAmps(double it) {
        made.ratedAmps(it);
        return this;
    }

    public SupplyBuilder continuousFraction(double it) {
        made.continuousFraction(it);
        return this;
    }

    public SupplyBuilder neutralFactor(double it) {
        made.neutralFactor(it);
        return this;
    }

    public SupplyBuilder inrushLimitAmps(double it) {
        made.inrushLimitAmps(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public SupplyBuilder with(Consumer<evenrise.model.project.SupplyBuilder> more) {
        more.accept(made);
        return this;
    }

    public Supply build() {
        return made.build();
    }
}
