package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What one command switches: a hall with controls of its own. */
@FileRecord
public record SwitchedSystem(
        @Field(meaning = "Name by which the system is referred to", atLeast = 1)
        String id,

        @Field(meaning = "Systems that are on before this one starts", distinct = true, byDefault = "[]")
        List<String> needs)
        implements SwitchedSystemBuilder.With {
    public SwitchedSystem {
        Contract.check(SwitchedSystem.class, id, needs);
        needs = List.copyOf(needs);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SwitchedSystemBuilder builder() {
        return Defaults.into(SwitchedSystemBuilder.unset(), SwitchedSystem.class);
    }
}
