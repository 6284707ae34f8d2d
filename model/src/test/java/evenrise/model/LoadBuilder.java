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

public final class LoadBuilder {
    private final String id;
    private String name;
    private Role role = Role.AUXILIARY;
    private int poles = 1;
    private double breakerAmps = 20;
    private Optional<TripCurve> curve = Optional.empty();
    private boolean switched = true;
    private double runningAmps = 10;
    private Double idleAmps;
    private double powerFactor = 1;
    private double thirdHarmonic = 0;
    private Double inrushPeakAmps;
    private double inrushHalfMillis = 10;
    private double settleSeconds = 0;
    private Optional<String> shutdownGroup = Optional.empty();
    private List<String> comesAfter = List.of();
    private List<String> panels = List.of();
    private List<String> apartFrom = List.of();
    private List<String> samePhaseAs = List.of();
    private FixedPlace fixed = FixedPlace.NONE;
    private Optional<Circuit> circuit = Optional.empty();
    private Optional<Equipment> equipment = Optional.empty();
    private Optional<RideThrough> rideThrough = Optional.empty();

    LoadBuilder(String id) {
        this.id = id;
    }

    public LoadBuilder name(String it) {
        name = it;
        return this;
    }

    public LoadBuilder role(Role it) {
        role = it;
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
        poles = it;
        return this;
    }

    public LoadBuilder twoPole() {
        return poles(2);
    }

    public LoadBuilder threePole() {
        return poles(3);
    }

    public LoadBuilder breakerAmps(double it) {
        breakerAmps = it;
        return this;
    }

    public LoadBuilder curve(TripCurve it) {
        curve = Optional.of(it);
        return this;
    }

    public LoadBuilder unswitched() {
        switched = false;
        return this;
    }

    public LoadBuilder runningAmps(double it) {
        runningAmps = it;
        return this;
    }

    public LoadBuilder idleAmps(double it) {
        idleAmps = it;
        return this;
    }

    public LoadBuilder powerFactor(double it) {
        powerFactor = it;
        return this;
    }

    public LoadBuilder thirdHarmonic(double it) {
        thirdHarmonic = it;
        return this;
    }

    public LoadBuilder inrushPeakAmps(double it) {
        inrushPeakAmps = it;
        return this;
    }

    public LoadBuilder inrushHalfMillis(double it) {
        inrushHalfMillis = it;
        return this;
    }

    public LoadBuilder settleSeconds(double it) {
        settleSeconds = it;
        return this;
    }

    public LoadBuilder group(String it) {
        shutdownGroup = Optional.of(it);
        return this;
    }

    public LoadBuilder comesAfter(String... it) {
        comesAfter = List.of(it);
        return this;
    }

    public LoadBuilder comesAfter(List<String> it) {
        comesAfter = it;
        return this;
    }

    public LoadBuilder panels(String... it) {
        panels = List.of(it);
        return this;
    }

    public LoadBuilder panels(List<String> it) {
        panels = it;
        return this;
    }

    public LoadBuilder apartFrom(String... it) {
        apartFrom = List.of(it);
        return this;
    }

    public LoadBuilder apartFrom(List<String> it) {
        apartFrom = it;
        return this;
    }

    public LoadBuilder samePhaseAs(String... it) {
        samePhaseAs = List.of(it);
        return this;
    }

    public LoadBuilder samePhaseAs(List<String> it) {
        samePhaseAs = it;
        return this;
    }

    public LoadBuilder fixed(FixedPlace it) {
        fixed = it;
        return this;
    }

    public LoadBuilder fixedPanel(String it) {
        return fixed(new FixedPlace(Optional.of(it), fixed.slot(), fixed.board(), fixed.output()));
    }

    public LoadBuilder fixedSlot(int it) {
        return fixed(new FixedPlace(fixed.panel(), OptionalInt.of(it), fixed.board(), fixed.output()));
    }

    public LoadBuilder fixedBoard(String it) {
        return fixed(new FixedPlace(fixed.panel(), fixed.slot(), Optional.of(it), fixed.output()));
    }

    public LoadBuilder fixedOutput(int it) {
        return fixed(new FixedPlace(fixed.panel(), fixed.slot(), fixed.board(), OptionalInt.of(it)));
    }

    public LoadBuilder circuit(Circuit it) {
        circuit = Optional.of(it);
        return this;
    }

    public LoadBuilder equipment(Equipment it) {
        equipment = Optional.of(it);
        return this;
    }

    public LoadBuilder rideThrough(RideThrough it) {
        rideThrough = Optional.of(it);
        return this;
    }

    public Load build() {
        return new Load(
                id,
                name,
                role,
                poles,
                breakerAmps,
                curve,
                switched,
                runningAmps,
                idleAmps,
                powerFactor,
                thirdHarmonic,
                inrushPeakAmps,
                inrushHalfMillis,
                settleSeconds,
                shutdownGroup,
                comesAfter,
                panels,
                apartFrom,
                samePhaseAs,
                fixed,
                circuit,
                equipment,
                rideThrough);
    }
}
