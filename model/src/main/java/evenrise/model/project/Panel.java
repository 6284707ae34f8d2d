package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A distribution panel (a distribution board, in other places): slots on bus rows, each row on one phase. */
@FileRecord
public record Panel(
        @Field(meaning = "Name by which the panel is referred to", atLeast = 1)
        String id,

        @Field(meaning = "Number of breaker slots; they are numbered from 1", min = 1, max = 1000)
        int slots,

        @Field(meaning = "Rated rms current of each line conductor", above = 0, max = 100_000)
        double ratedAmps,

        @Field(meaning = "Capacity of the neutral over that of a line conductor", above = 0, max = 4, byDefault = "1")
        double neutralFactor,

        @Field(
                meaning = "Greatest allowed instantaneous peak on any phase; the hard rule holds it at nominal voltage",
                above = 0,
                optional = true)
        OptionalDouble inrushLimitAmps,

        @Field(meaning = "How slots are numbered", byDefault = "\"alternating\"")
        SlotNumbering numbering,

        @Field(
                meaning = "Phase of each row, from row 1, repeated; the system's phases in order when absent",
                optional = true)
        List<Phase> phaseRotation,

        @Field(meaning = "Slots that take no breaker", min = 1, max = 1000, distinct = true, byDefault = "[]")
        List<Integer> reservedSlots,

        @Field(
                meaning = "Slots that take a switched breaker; every slot when absent",
                min = 1,
                max = 1000,
                distinct = true,
                optional = true)
        Optional<List<Integer>> switchedSlots,

        @Field(meaning = "Wiring between the supply and the panel", optional = true)
        Optional<Feeder> feeder,

        @Field(
                meaning = "Least rms short-circuit current that the panel and its breakers can interrupt",
                above = 0,
                optional = true)
        OptionalDouble interruptingAmps,

        @Field(
                meaning = "Part of its rating that continuous running current may use; the supply's when absent",
                above = 0,
                max = 1,
                optional = true)
        OptionalDouble continuousFraction,

        @Field(meaning = "Its main device, where it has one beside the feeder's", optional = true)
        Optional<Device> main,

        @Field(
                meaning = "Document of its maker that says that its devices may be withdrawn and put in while the panel"
                        + " is live and under load; without one, the panel is dead while a breaker in it is"
                        + " worked on",
                atLeast = 1,
                optional = true)
        Optional<String> withdrawableUnderLoad,

        @Field(
                meaning = "Node or panel that feeds it; the supply when absent, which may be named supply, too",
                optional = true)
        Optional<String> fedFrom,

        @Field(meaning = "Room to be left in it; the project's when absent", optional = true)
        Optional<Spare> spare,

        @Field(
                meaning = "Node or panel, of the same voltage, that it can be transferred to from what feeds it",
                optional = true)
        Optional<String> alternateFedFrom,

        @Field(
                meaning = "Time without voltage while it is transferred, either way; where there is an alternate",
                min = 0,
                max = 3600,
                optional = true)
        OptionalDouble transferSeconds,

        @Field(meaning = "Whether the transfer switches the neutral, too; not judged when absent", optional = true)
        Optional<Boolean> neutralSwitched,

        @Field(meaning = "Where it stands, for schedules and labels", atLeast = 1, optional = true)
        Optional<String> location,

        @Field(meaning = "How it is mounted: surface, flush, free-standing", atLeast = 1, optional = true)
        Optional<String> mounting,

        @Field(meaning = "Its enclosure: NEMA 1, IP31", atLeast = 1, optional = true)
        Optional<String> enclosure)
        implements PanelBuilder.With {
    public Panel {
        Contract.check(
                Panel.class,
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
                interruptingAmps,
                continuousFraction,
                main,
                withdrawableUnderLoad,
                fedFrom,
                spare,
                alternateFedFrom,
                transferSeconds,
                neutralSwitched,
                location,
                mounting,
                enclosure);
        phaseRotation = List.copyOf(phaseRotation);
        reservedSlots = List.copyOf(reservedSlots);
        switchedSlots = switchedSlots.map(List::copyOf);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static PanelBuilder builder() {
        return Defaults.into(PanelBuilder.unset(), Panel.class);
    }

    /** Part of the rating that continuous running current may use: its own, else that of the supply. */
    public double continuousFractionUnder(Supply supply) {
        return continuousFraction.orElse(supply.continuousFraction());
    }

    /** Greatest rms current that each line conductor may run at. */
    public double continuousAmpsUnder(Supply supply) {
        return ratedAmps * continuousFractionUnder(supply);
    }

    /**
     * Whether a breaker may take these slots, whoever else sits there: none of them is reserved, and for one that is switched
     * each is made for that.
     */
    public boolean takes(List<Integer> slots, boolean isSwitched) {
        return slots.stream().noneMatch(reservedSlots::contains)
                && (!isSwitched
                        || switchedSlots.map(made -> made.containsAll(slots)).orElse(true));
    }

    /** Greatest rms current that its neutral may carry. */
    public double neutralAmps() {
        return ratedAmps * neutralFactor;
    }
}
