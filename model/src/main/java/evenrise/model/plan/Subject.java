package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** One thing that a finding is about. */
@FileRecord
public record Subject(
        @Field(meaning = "What it is; a board and a group may have the same id")
        SubjectKind kind,

        @Field(meaning = "Its id; supply for the supply", atLeast = 1)
        String id)
        implements SubjectBuilder.With {
    public Subject {
        Contract.check(Subject.class, kind, id);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SubjectBuilder builder() {
        return Defaults.into(SubjectBuilder.unset(), Subject.class);
    }
}
