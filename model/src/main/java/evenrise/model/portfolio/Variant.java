package evenrise.model.portfolio;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;

/** A project as it would be: some of its values are others. */
public record Variant(
        @Field(
                meaning = "What the variant is called: letters, digits and hyphens, since files are named by it",
                atLeast = 1)
        String name,

        @Field(meaning = "What is another than in the project's file", optional = true)
        List<ValueChange> changes) {

    /** Nothing changed. */
    public static final Variant AS_IS = new Variant("as-is", List.of());

    public Variant {
        Contract.check(Variant.class, name, changes);
        changes = List.copyOf(changes);
    }
}
