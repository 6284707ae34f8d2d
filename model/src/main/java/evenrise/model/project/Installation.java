package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** How cables are laid where a circuit or feeder does not say. */
@FileRecord
public record Installation(
        @Field(meaning = "Temperature of the air around cables", min = -50, max = 100, byDefault = "30")
        double ambientCelsius)
        implements InstallationBuilder.With {
    public Installation {
        Contract.check(Installation.class, ambientCelsius);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static InstallationBuilder builder() {
        return Defaults.into(InstallationBuilder.unset(), Installation.class);
    }
}
