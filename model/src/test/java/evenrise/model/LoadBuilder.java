package evenrise.model;

import evenrise.model.project.Circuit;
import evenrise.model.project.Equipment;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.RideThrough;
import evenrise.model.project.Role;
import evenrise.model.project.TripCurve;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;

public final class LoadBuilder {
    private final evenrise.model.project.LoadBuilder made;

    LoadBuilder(String id) {
        made = Load.builder()
                .id(id)
                .role(Role.AUXILIARY)
                .poles(1)
                .breakerAmps(20)
                .switched(true)
                .runningAmps(10)
                .powerFactor(1)
                .inrushHalfMillis(10)
                .settleSeconds(0)
                .fixed(FixedPlace.NONE);
    }

    public LoadBuilder name(String it) {
        made.name(it);
        return this;
    }

    public LoadBuilder role(Role it) {
        made.role(it);
        return this;
    }

    public LoadBuilder processing() {
        return role(Role.PROCESSING);
    }

    public LoadBuilder auxiliary() {
        return role(Role.AUXILIARY);
    }

    public LoadBuilder amplifier() {
        return role(Role.AMPLIFIER);
    }

    public LoadBuilder poles(int it) {
        made.poles(it);
        return this;
    }

    public LoadBuilder twoPole() {
        return poles(2);
    }

    public LoadBuilder threePole() {
        return poles(3);
    }

    public LoadBuilder breakerAmps(double it) {
        made.breakerAmps(it);
        return this;
    }

    public LoadBuilder curve(TripCurve it) {
        made.curve(it);
        return this;
    }

    public LoadBuilder unswitched() {
        made.switched(false);
        return this;
    }

    public LoadBuilder runningAmps(double it) {
        made.runningAmps(it);
        return this;
    }

    public LoadBuilder idleAmps(double it) {
        made.idleAmps(it);
        return this;
    }

    public LoadBuilder powerFactor(double it) {
        made.powerFactor(it);
        return this;
    }

    public LoadBuilder thirdHarmonic(double it) {
        made.thirdHarmonic(it);
        return this;
    }

    public LoadBuilder inrushPeakAmps(double it) {
        made.inrushPeakAmps(it);
        return this;
    }

    public LoadBuilder inrushHalfMillis(double it) {
        made.inrushHalfMillis(it);
        return this;
    }

    public LoadBuilder settleSeconds(double it) {
        made.settleSeconds(it);
        return this;
    }

    public LoadBuilder group(String it) {
        made.shutdownGroup(it);
        return this;
    }

    public LoadBuilder needsGroups(String... it) {
        made.needsGroups(List.of(it));
        return this;
    }

    public LoadBuilder comesAfter(String... it) {
        made.comesAfter(List.of(it));
        return this;
    }

    public LoadBuilder comesAfter(List<String> it) {
        made.comesAfter(it);
        return this;
    }

    public LoadBuilder panels(String... it) {
        made.panels(List.of(it));
        return this;
    }

    public LoadBuilder panels(List<String> it) {
        made.panels(it);
        return this;
    }

    public LoadBuilder apartFrom(String... it) {
        made.apartFrom(List.of(it));
        return this;
    }

    public LoadBuilder apartFrom(List<String> it) {
        made.apartFrom(it);
        return this;
    }

    public LoadBuilder samePhaseAs(String... it) {
        made.samePhaseAs(List.of(it));
        return this;
    }

    public LoadBuilder samePhaseAs(List<String> it) {
        made.samePhaseAs(it);
        return this;
    }

    public LoadBuilder fixed(FixedPlace it) {
        made.fixed(it);
        return this;
    }

    public LoadBuilder fixedPanel(String it) {
        return fixed(made.fixed().withPanel(Optional.of(it)));
    }

    public LoadBuilder fixedSlot(int it) {
        return fixed(made.fixed().withSlot(OptionalInt.of(it)));
    }

    public LoadBuilder fixedBoard(String it) {
        return fixed(made.fixed().withBoard(Optional.of(it)));
    }

    public LoadBuilder fixedOutput(int it) {
        return fixed(made.fixed().withOutput(OptionalInt.of(it)));
    }

    public LoadBuilder circuit(Circuit it) {
        made.circuit(it);
        return this;
    }

    public LoadBuilder equipment(Equipment it) {
        made.equipment(it);
        return this;
    }

    public LoadBuilder rideThrough(RideThrough it) {
        made.rideThrough(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public LoadBuilder with(Consumer<evenrise.model.project.LoadBuilder> more) {
        more.accept(made);
        return this;
    }

    public LoadBuilder guessed(String... it) {
        made.guessed(List.of(it));
        return this;
    }

    public LoadBuilder crestFactor(double it) {
        made.crestFactor(it);
        return this;
    }

    public Load build() {
        return made.build();
    }
}
