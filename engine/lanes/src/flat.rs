//! Structs of numbers as plain lists of them: what one program hands to another.

use core::slice::Iter;

/// What can be written as so many numbers in a row, and read again.
pub trait Flat: Sized {
    /// How many.
    const NUMBERS: usize;

    /// Writes them.
    fn write(&self, to: &mut Vec<f32>);

    /// Reads them; none if there are too few.
    fn read(from: &mut Iter<'_, f32>) -> Option<Self>;
}

impl Flat for f32 {
    const NUMBERS: usize = 1;

    fn write(&self, to: &mut Vec<f32>) {
        to.push(*self);
    }

    fn read(from: &mut Iter<'_, f32>) -> Option<Self> {
        from.next().copied()
    }
}

impl Flat for bool {
    const NUMBERS: usize = 1;

    fn write(&self, to: &mut Vec<f32>) {
        to.push(if *self { 1.0 } else { 0.0 });
    }

    fn read(from: &mut Iter<'_, f32>) -> Option<Self> {
        from.next().map(|number| *number > 0.0)
    }
}

impl Flat for u8 {
    const NUMBERS: usize = 1;

    fn write(&self, to: &mut Vec<f32>) {
        to.push((*self).into());
    }

    fn read(from: &mut Iter<'_, f32>) -> Option<Self> {
        from.next().map(|number| *number as Self)
    }
}

impl<T: Flat + Copy + Default, const N: usize> Flat for [T; N] {
    const NUMBERS: usize = N * T::NUMBERS;

    fn write(&self, to: &mut Vec<f32>) {
        for own in self {
            own.write(to);
        }
    }

    fn read(from: &mut Iter<'_, f32>) -> Option<Self> {
        let mut all = [T::default(); N];
        for own in &mut all {
            *own = T::read(from)?;
        }
        Some(all)
    }
}

/// Makes a struct flat, field by field.
macro_rules! flat {
    ($name:ident { $($field:ident: $kind:ty),* $(,)? }) => {
        impl $crate::Flat for $name {
            const NUMBERS: usize = 0 $(+ <$kind as $crate::Flat>::NUMBERS)*;

            fn write(&self, to: &mut Vec<f32>) {
                $($crate::Flat::write(&self.$field, to);)*
            }

            fn read(from: &mut core::slice::Iter<'_, f32>) -> Option<Self> {
                Some(Self { $($field: $crate::Flat::read(from)?),* })
            }
        }
    };
}
pub(crate) use flat;
