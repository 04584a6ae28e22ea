import '@mantine/core/styles/baseline.css'
import '@mantine/core/styles/default-css-variables.css'
import '@mantine/core/styles/global.css'
import '@mantine/core/styles/UnstyledButton.css'
import '@mantine/core/styles/Button.css'
import '@mantine/core/styles/ActionIcon.css'
import '@mantine/core/styles/CloseButton.css'
import '@mantine/core/styles/Input.css'
import '@mantine/core/styles/InlineInput.css'
import '@mantine/core/styles/Checkbox.css'
import '@mantine/core/styles/Loader.css'
import '@mantine/core/styles/Progress.css'
import { type CSSVariablesResolver, createTheme, type MantineColorsTuple } from '@mantine/core'

const deep: MantineColorsTuple = [
  '#eaf4fa',
  '#d5e7f1',
  '#b3d5e8',
  '#9cc5dd',
  '#5fa0c6',
  '#2f7aa8',
  '#0b4f7d',
  '#0b4f7d',
  '#0a3f64',
  '#08314e',
]

/** Help stands under the field, so that fields side by side are level. */
const helpBelow = { defaultProps: { inputWrapperOrder: ['label', 'input', 'description', 'error'] } }

/** The widgets in the sea chart's colours: every colour is one of base.css, so that both themes and print follow it. */
export const theme = createTheme({
  primaryColor: 'deep',
  primaryShade: 6,
  colors: { deep },
  fontFamily: 'var(--sans)',
  headings: { fontFamily: 'var(--serif)' },
  defaultRadius: 3,
  fontSizes: { xs: '0.875rem', sm: '1rem', md: '1.0625rem' },
  cursorType: 'pointer',
  components: { TextInput: helpBelow, Textarea: helpBelow, NativeSelect: helpBelow },
  variantColorResolver: ({ variant }) => {
    if (variant === 'filled')
      return {
        background: 'var(--deep)',
        hover: 'color-mix(in srgb, var(--deep) 86%, var(--ink))',
        color: 'var(--on-deep)',
        border: '1px solid transparent',
      }
    return {
      background: variant === 'subtle' ? 'transparent' : 'var(--sheet)',
      hover: 'var(--shoal)',
      color: 'var(--ink)',
      border: variant === 'subtle' ? '1px solid transparent' : '1px solid var(--rule-strong)',
    }
  },
})

const shared = {
  '--mantine-color-body': 'var(--sheet)',
  '--mantine-color-text': 'var(--ink)',
  '--mantine-color-bright': 'var(--ink)',
  '--mantine-color-dimmed': 'var(--ink-soft)',
  '--mantine-color-placeholder': 'var(--ink-soft)',
  '--mantine-color-error': 'var(--loss)',
  '--mantine-color-anchor': 'var(--deep)',
  '--mantine-color-default': 'var(--sheet)',
  '--mantine-color-default-hover': 'var(--shoal)',
  '--mantine-color-default-color': 'var(--ink)',
  '--mantine-color-default-border': 'var(--rule-strong)',
  '--mantine-primary-color-filled': 'var(--deep)',
  '--mantine-color-deep-filled': 'var(--deep)',
}

export const variables: CSSVariablesResolver = () => ({ variables: shared, light: shared, dark: shared })
