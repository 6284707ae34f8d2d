package evenrise.model;

import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Supply;
import java.util.OptionalDouble;

public final class SupplyBuilder {
    private PhaseSystem system = PhaseSystem.THREE_PHASE;
    private double lineToNeutralVolts = 120;
    private double frequencyHertz = 60;
    private double ratedAmps = 400;
    private double continuousFraction = 0.8;
    private double neutralFactor = 1;
    private OptionalDouble inrushLimitAmps = OptionalDouble.empty();

    SupplyBuilder() {}

    public SupplyBuilder system(PhaseSystem it) {
        system = it;
        return this;
    }

    public SupplyBuilder splitPhase() {
        return system(PhaseSystem.SPLIT_PHASE);
    }

    public SupplyBuilder singlePhase() {
        return system(PhaseSystem.SINGLE_PHASE);
    }

    public SupplyBuilder lineToNeutralVolts(double it) {
        lineToNeutralVolts = it;
        return this;
    }

    public SupplyBuilder frequencyHertz(double it) {
        frequencyHertz = it;
        return this;
    }

    public SupplyBuilder ratedAmps(double it) {
        ratedAmps = it;
        return this;
    }

    public SupplyBuilder continuousFraction(double it) {
        continuousFraction = it;
        return this;
    }

    public SupplyBuilder neutralFactor(double it) {
        neutralFactor = it;
        return this;
    }

    public SupplyBuilder inrushLimitAmps(double it) {
        inrushLimitAmps = OptionalDouble.of(it);
        return this;
    }

    public Supply build() {
        return new Supply(
                system,
                lineToNeutralVolts,
                frequencyHertz,
                ratedAmps,
                continuousFraction,
                neutralFactor,
                inrushLimitAmps);
    }
}
