package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What one breaker feeds. Currents are line currents in each pole. */
@FileRecord
public record Load(
        @Field(meaning = "Name by which the load is referred to", atLeast = 1)
        String id,

        @Field(meaning = "What the load is, for people; the id when absent", optional = true)
        String name,

        @Field(meaning = "What it does in the signal chain") Role role,

        @Field(meaning = "Poles of its breaker", min = 1, max = 3, byDefault = "1")
        int poles,

        @Field(meaning = "Rated rms current of its breaker", above = 0, max = 6300)
        double breakerAmps,

        @Field(meaning = "Instantaneous trip band of its breaker", optional = true)
        Optional<TripCurve> curve,

        @Field(meaning = "Whether a control board switches it", byDefault = "true")
        boolean switched,

        @Field(meaning = "Rms current at full design use", min = 0, max = 6300)
        double runningAmps,

        @Field(
                meaning = "Rms current right after power-up; running_a when absent",
                min = 0,
                max = 6300,
                optional = true)
        Double idleAmps,

        @Field(
                meaning = "Displacement power factor, lagging unless leading is true",
                above = 0,
                max = 1,
                byDefault = "1")
        double powerFactor,

        @Field(
                meaning = "Third harmonic over fundamental current; 0 counts as stated, absent counts as 0 and its "
                        + "waveform as not stated",
                min = 0,
                max = 2,
                optional = true)
        OptionalDouble thirdHarmonic,

        @Field(
                meaning = "Instantaneous peak at switch-on at nominal voltage; √2·idle_a says that there is no inrush"
                        + " and counts as stated; absent counts as that and as not stated",
                min = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble inrushPeakAmps,

        @Field(meaning = "Time in which the inrush's excess halves", above = 0, max = 600_000, byDefault = "10")
        double inrushHalfMillis,

        @Field(
                meaning = "Time from switch-on until what depends on it may come on",
                min = 0,
                max = 3600,
                byDefault = "0")
        double settleSeconds,

        @Field(meaning = "Shutdown group it belongs to", optional = true)
        Optional<String> shutdownGroup,

        @Field(meaning = "Loads that must be on and settled before it", distinct = true, byDefault = "[]")
        List<String> comesAfter,

        @Field(meaning = "Panels it may sit in; any when absent", distinct = true, byDefault = "[]")
        List<String> panels,

        @Field(meaning = "Loads that must sit in another panel", distinct = true, byDefault = "[]")
        List<String> apartFrom,

        @Field(meaning = "Loads that must touch the same phases", distinct = true, byDefault = "[]")
        List<String> samePhaseAs,

        @Field(meaning = "Parts of its place that are decided already", optional = true)
        FixedPlace fixed,

        @Field(meaning = "Breaker and wiring, for the electrical review", optional = true)
        Optional<Circuit> circuit,

        @Field(meaning = "What it is, for the electrical review", optional = true)
        Optional<Equipment> equipment,

        @Field(meaning = "Sag that it rides through, for the electrical review", optional = true)
        Optional<RideThrough> rideThrough,

        @Field(
                meaning = "Fields of this load that nobody stated, but that were guessed; each is to be confirmed",
                distinct = true,
                byDefault = "[]")
        List<String> guessed,

        @Field(meaning = "Whether its current leads its voltage by power_factor", byDefault = "false")
        boolean leading,

        @Field(
                meaning = "Crest of its idle current over the rms value; where absent, that of third_harmonic",
                min = 1,
                max = 10,
                optional = true)
        OptionalDouble crestFactor,

        @Field(
                meaning = "Shutdown groups whose processing an amplifier or auxiliary load needs on, beside that of its"
                        + " own group and processing in no group; for emergencies and partial commands, the"
                        + " sequence has all processing first. An amplifier that states none of this needs all"
                        + " processing",
                distinct = true,
                optional = true)
        Optional<List<String>> needsGroups,

        @Field(
                meaning = "System whose command switches it; for an unswitched load only what scenes say of it",
                optional = true)
        Optional<String> system,

        @Field(
                meaning =
                        "What its output switches: a breaker of its own that can be switched, or a contactor behind an"
                                + " ordinary one",
                byDefault = "\"breaker\"")
        SwitchedBy switchedBy,

        @Field(meaning = "Load behind whose contactor it is, too: on and off with it, in its panel", optional = true)
        Optional<String> comesWith,

        @Field(meaning = "Rack that it is mounted in", optional = true)
        Optional<String> rack,

        @Field(
                meaning = "Voltage between a line conductor and neutral that it is made for; it sits where the system"
                        + " has that within 5 %",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble lineToNeutralVolts,

        @Field(
                meaning =
                        "How much later than the mirror says it goes off: a lamp that cools, a server that shuts down",
                min = 0,
                max = 86_400,
                byDefault = "0")
        double offAfterSeconds,

        @Field(
                meaning = "The contactor that it is switched by, for the electrical review; of loads that come with it,"
                        + " too",
                optional = true)
        Optional<Contactor> contactor,

        @Field(
                meaning = "Kind of gear it is, in words of your own, for people and for defaults",
                atLeast = 1,
                optional = true)
        Optional<String> kind,

        @Field(
                meaning = "What was measured of it, the latest last, beside what its fields said before; programs that"
                        + " judge go by the fields themselves",
                byDefault = "[]")
        List<MeasuredValue> measured)
        implements LoadBuilder.With {
    public Load {
        name = name == null || name.isBlank() ? id : name;
        idleAmps = idleAmps == null ? (Double) runningAmps : idleAmps;
        fixed = fixed == null ? FixedPlace.NONE : fixed;
        Contract.check(
                Load.class,
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
                rideThrough,
                guessed,
                leading,
                crestFactor,
                needsGroups,
                system,
                switchedBy,
                comesWith,
                rack,
                lineToNeutralVolts,
                offAfterSeconds,
                contactor,
                kind,
                measured);
        comesAfter = List.copyOf(comesAfter);
        panels = List.copyOf(panels);
        apartFrom = List.copyOf(apartFrom);
        samePhaseAs = List.copyOf(samePhaseAs);
        guessed = List.copyOf(guessed);
        measured = List.copyOf(measured);
        needsGroups = needsGroups.map(List::copyOf);
    }

    /** Whether it may sit in a panel by what it states itself: the panels that it allows, and one that is fixed. */
    public boolean maySitIn(String panel) {
        return (panels.isEmpty() || panels.contains(panel))
                && fixed.panel().orElse(panel).equals(panel);
    }

    /** Whether it is a motor by what its equipment says. */
    public boolean isMotor() {
        return equipment.flatMap(Equipment::motor).isPresent();
    }

    /** Begins with what a file gives that leaves everything out. */
    public static LoadBuilder builder() {
        return Defaults.into(LoadBuilder.unset(), Load.class);
    }

    /** Instantaneous peak at switch-on that counts: as stated, else √2·idle, which is no inrush. */
    public double inrushAmps() {
        return inrushPeakAmps.orElse(baseAmps());
    }

    /** Crest of the idle current, taken as a sine: √2·idle. */
    public double baseAmps() {
        return Math.sqrt(2) * idleAmps;
    }

    /** How far the peak at switch-on exceeds the base; 0 where it does not. */
    public double excessAmps() {
        return Math.max(0, inrushAmps() - baseAmps());
    }

    /** Third harmonic over fundamental that counts: as stated, else 0. */
    public double harmonicRatio() {
        return thirdHarmonic.orElse(0);
    }

    /** Whether the crest of its idle current follows from what is stated. */
    public boolean statesWaveform() {
        return crestFactor.isPresent() || thirdHarmonic.isPresent();
    }
}
