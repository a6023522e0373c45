#![doc = include_str!("../../CALIBRATION.md")]
