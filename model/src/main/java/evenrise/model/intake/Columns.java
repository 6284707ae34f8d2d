package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.function.Function;

/** The headers under which a sheet has what is wanted; a header that is not named is recognised by its usual words. */
@FileRecord
public record Columns(
        @Field(meaning = "Header of the number of equal pieces", optional = true)
        Optional<String> quantity,

        @Field(meaning = "Header of what it is", optional = true)
        Optional<String> name,

        @Field(meaning = "Header of the room", optional = true)
        Optional<String> room,

        @Field(meaning = "Header of the rack", optional = true)
        Optional<String> rack,

        @Field(meaning = "Header of the role", optional = true)
        Optional<String> role,

        @Field(meaning = "Header of the shutdown zone", optional = true)
        Optional<String> zone,

        @Field(meaning = "Header of the feed of redundant pieces, A or B", optional = true)
        Optional<String> feed,

        @Field(meaning = "Header of the voltage", optional = true)
        Optional<String> volts,

        @Field(meaning = "Header of the active power", optional = true)
        Optional<String> watts,

        @Field(meaning = "Header of the apparent power", optional = true)
        Optional<String> voltAmps,

        @Field(meaning = "Header of the line current", optional = true)
        Optional<String> amps,

        @Field(meaning = "Header of the idle current", optional = true)
        Optional<String> idle,

        @Field(meaning = "Header of the inrush peak", optional = true)
        Optional<String> inrush,

        @Field(meaning = "Header of the power factor", optional = true)
        Optional<String> powerFactor,

        @Field(meaning = "Header of the outlet's or plug's rating", optional = true)
        Optional<String> outlet,

        @Field(meaning = "Header of whether it is switched", optional = true)
        Optional<String> switched,

        @Field(meaning = "Header of whether it is life-safety equipment", optional = true)
        Optional<String> lifeSafety,

        @Field(meaning = "Header of remarks, read for words that say what must not be switched", optional = true)
        Optional<String> notes,

        @Field(meaning = "Header of the system, which one command switches", optional = true)
        Optional<String> system,

        @Field(meaning = "Header of the panel that feeds it", optional = true)
        Optional<String> fedFrom,

        @Field(
                meaning = "Header of the contactor that it is behind; the first load of each is switched by it, the"
                        + " others come with that",
                optional = true)
        Optional<String> contactor,

        @Field(meaning = "Header of the voltage between line and neutral that it is made for", optional = true)
        Optional<String> lineToNeutral,

        @Field(meaning = "Header of how much later than its turn it goes off", optional = true)
        Optional<String> offDelay,

        @Field(meaning = "Header of the name that drawings have for it, which becomes the id", optional = true)
        Optional<String> tag,

        @Field(meaning = "Header of the breaker that it is on, as 20/2, C16 or 16 A/3P", optional = true)
        Optional<String> breaker,

        @Field(
                meaning = "Header of the circuit that it is on; what has the same circuit shares a breaker",
                optional = true)
        Optional<String> circuit,

        @Field(meaning = "Header of the number of phases, 1 or 3", optional = true)
        Optional<String> phases,

        @Field(meaning = "Header of the power on a motor's shaft, in horsepower", optional = true)
        Optional<String> shaftPower,

        @Field(meaning = "Header of the fewest equal pieces there may be", optional = true)
        Optional<String> quantityLow,

        @Field(meaning = "Header of the most equal pieces there may be", optional = true)
        Optional<String> quantityHigh) {
    public static final Columns BY_THEIR_WORDS = builder().build();

    public Columns {
        Contract.check(
                Columns.class,
                quantity,
                name,
                room,
                rack,
                role,
                zone,
                feed,
                volts,
                watts,
                voltAmps,
                amps,
                idle,
                inrush,
                powerFactor,
                outlet,
                switched,
                lifeSafety,
                notes,
                system,
                fedFrom,
                contactor,
                lineToNeutral,
                offDelay,
                tag,
                breaker,
                circuit,
                phases,
                shaftPower,
                quantityLow,
                quantityHigh);
    }

    /** @param header of a component, by its name */
    public static Columns of(Function<String, Optional<String>> header) {
        return builder()
                .quantity(header.apply("quantity"))
                .name(header.apply("name"))
                .room(header.apply("room"))
                .rack(header.apply("rack"))
                .role(header.apply("role"))
                .zone(header.apply("zone"))
                .feed(header.apply("feed"))
                .volts(header.apply("volts"))
                .watts(header.apply("watts"))
                .voltAmps(header.apply("voltAmps"))
                .amps(header.apply("amps"))
                .idle(header.apply("idle"))
                .inrush(header.apply("inrush"))
                .powerFactor(header.apply("powerFactor"))
                .outlet(header.apply("outlet"))
                .switched(header.apply("switched"))
                .lifeSafety(header.apply("lifeSafety"))
                .notes(header.apply("notes"))
                .system(header.apply("system"))
                .fedFrom(header.apply("fedFrom"))
                .contactor(header.apply("contactor"))
                .lineToNeutral(header.apply("lineToNeutral"))
                .offDelay(header.apply("offDelay"))
                .tag(header.apply("tag"))
                .breaker(header.apply("breaker"))
                .circuit(header.apply("circuit"))
                .phases(header.apply("phases"))
                .shaftPower(header.apply("shaftPower"))
                .quantityLow(header.apply("quantityLow"))
                .quantityHigh(header.apply("quantityHigh"))
                .build();
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ColumnsBuilder builder() {
        return Defaults.into(ColumnsBuilder.unset(), Columns.class);
    }
}
