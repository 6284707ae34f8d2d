package evenrise.model.portfolio;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.Optional;
import java.util.OptionalDouble;

/** One value of a project, or the same value of many parts of it, becomes another. Just one of the last three is given. */
public record ValueChange(
        @Field(
                meaning =
                        "Where the value is: a JSON pointer (RFC 6901), in which an entry of a list may be named by its"
                                + " id instead of its number, and * is every entry: /loads/AMP-1/inrush_peak_a, /panels/*/main_a",
                atLeast = 2)
        String at,

        @Field(meaning = "What it becomes", optional = true) OptionalDouble number,

        @Field(meaning = "What it becomes, where it is a word or a name", optional = true)
        Optional<String> text,

        @Field(meaning = "What the number there is multiplied by", above = 0, max = 1000, optional = true)
        OptionalDouble factor) {
    public ValueChange {
        Contract.check(ValueChange.class, at, number, text, factor);
    }

    /** How many of the ways to say what the value becomes are used; one is right. */
    public long ways() {
        return (number.isPresent() ? 1 : 0) + (text.isPresent() ? 1 : 0) + (factor.isPresent() ? 1 : 0);
    }
}
