package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** A motor, started across the line. */
@FileRecord
public record Motor(
        @Field(meaning = "Rated shaft power in horsepower", above = 0, max = 10_000, optional = true)
        OptionalDouble horsepower,

        @Field(meaning = "Code letter on its nameplate", optional = true)
        Optional<CodeLetter> codeLetter,

        @Field(
                meaning = "Rms line current at locked rotor, by the datasheet",
                above = 0,
                max = 100_000,
                optional = true)
        OptionalDouble lockedRotorAmps)
        implements MotorBuilder.With {
    public Motor {
        Contract.check(Motor.class, horsepower, codeLetter, lockedRotorAmps);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static MotorBuilder builder() {
        return Defaults.into(MotorBuilder.unset(), Motor.class);
    }
}
