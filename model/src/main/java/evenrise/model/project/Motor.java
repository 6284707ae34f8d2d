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
        @Field(
                meaning = "Rated shaft power in horsepower; of each where circuit.devices says several",
                above = 0,
                max = 10_000,
                optional = true)
        OptionalDouble horsepower,

        @Field(meaning = "Code letter on its nameplate", optional = true)
        Optional<CodeLetter> codeLetter,

        @Field(
                meaning = "Rms line current at locked rotor, by the datasheet; of each where circuit.devices says"
                        + " several",
                above = 0,
                max = 100_000,
                optional = true)
        OptionalDouble lockedRotorAmps,

        @Field(meaning = "Full-load line current by its nameplate", above = 0, max = 100_000, optional = true)
        OptionalDouble nameplateAmps,

        @Field(meaning = "Service factor on its nameplate", min = 1, max = 2, byDefault = "1")
        double serviceFactor,

        @Field(
                meaning = "Setting of its overload device; of each motor's where circuit.devices says several",
                above = 0,
                max = 100_000,
                optional = true)
        OptionalDouble overloadAmps,

        @Field(meaning = "Whether its rotor is wound, with slip rings", byDefault = "false")
        boolean woundRotor,

        @Field(
                meaning = "Whether it drives a hoist or crane, whose circuits have rules of their own",
                byDefault = "false")
        boolean hoist,

        @Field(meaning = "What closes when it starts", byDefault = "\"breaker\"")
        MotorStart startedBy,

        @Field(
                meaning = "Which order of the phases turns a three-phase motor the right way; forward, A B C, when"
                        + " absent",
                optional = true)
        Optional<MotorRotation> rotation,

        @Field(
                meaning = "Power factor at locked rotor; the worst of all when absent",
                above = 0,
                max = 1,
                optional = true)
        OptionalDouble lockedRotorPowerFactor)
        implements MotorBuilder.With {
    public Motor {
        Contract.check(
                Motor.class,
                horsepower,
                codeLetter,
                lockedRotorAmps,
                nameplateAmps,
                serviceFactor,
                overloadAmps,
                woundRotor,
                hoist,
                startedBy,
                rotation,
                lockedRotorPowerFactor);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static MotorBuilder builder() {
        return Defaults.into(MotorBuilder.unset(), Motor.class);
    }
}
