package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.Optional;

/** The headers under which a sheet has what is wanted; a header that is not named is recognised by its usual words. */
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
        Optional<String> powerFactor) {
    public static final Columns BY_THEIR_WORDS = new Columns(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

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
                powerFactor);
    }
}
